package org.salvedge.cli;

/** The program's version, as its jar says. */
final class Version {
    private Version() {}

    static String text() {
        String version = Version.class.getPackage().getImplementationVersion();
        return "salvedge " + (version == null ? "(not packaged)" : version) + "\n";
    }
}
