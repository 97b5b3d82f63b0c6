package org.salvedge.worth.study;

/** Is told what happens to the sets of a lot; days since the shop's first day, money in minor units, whole minutes or -1. */
interface Recorder {
    /** Writes nothing down. */
    Recorder NOBODY = new Recorder() {
        @Override
        public void set(int index, int family, boolean asListed, boolean arrived, boolean incomplete) {}

        @Override
        public void attempt(
                int index,
                int day,
                int minute,
                int fault,
                int fix,
                int technician,
                int passed,
                int grade,
                int diagnosis,
                int minutes,
                long parts) {}

        @Override
        public void exit(int index, int day, int kind, long gross, long costs, int minutes, int channel, int grade) {}

        @Override
        public void comeback(int index, int day, long cost, boolean restocked, int fault) {}

        @Override
        public void lotMinutes(int minutes) {}
    };

    /** @param asListed whether it is the model that the manifest said; false also where the manifest had none */
    void set(int index, int family, boolean asListed, boolean arrived, boolean incomplete);

    void attempt(
            int index,
            int day,
            int minute,
            int fault,
            int fix,
            int technician,
            int passed,
            int grade,
            int diagnosis,
            int minutes,
            long parts);

    void exit(int index, int day, int kind, long gross, long costs, int minutes, int channel, int grade);

    void comeback(int index, int day, long cost, boolean restocked, int fault);

    void lotMinutes(int minutes);
}
