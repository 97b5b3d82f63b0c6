package org.salvedge.demo;

import java.util.List;

/**
 * A model family of the invented shop.
 *
 * @param beginning what its model numbers begin with; the family's name
 * @param inches screen diagonal
 * @param rows vertical resolution
 * @param price of a working set of grade B at the start, book currency
 * @param share how often it stands on a manifest, relative to the others
 * @param lines how much more often than usual its fault is a line fault (1 = as usual)
 * @param craft how much better than usual the shop is at it, on the logit scale
 */
record DemoFamily(
        String maker, String beginning, int inches, int rows, double price, double share, double lines, double craft) {

    static final List<DemoFamily> ALL = List.of(
            new DemoFamily("Kestrel", "KX-55", 55, 2160, 236, 10, 1.7, .35),
            new DemoFamily("Kestrel", "KX-43", 43, 2160, 158, 8, 1.2, .1),
            new DemoFamily("Kestrel", "KX-65", 65, 2160, 322, 6, 1.5, .1),
            new DemoFamily("Orlan", "43U", 43, 2160, 149, 9, .6, .2),
            new DemoFamily("Orlan", "50U", 50, 2160, 188, 8, .7, .1),
            new DemoFamily("Orlan", "32H", 32, 720, 84, 7, .5, .2),
            new DemoFamily("Vesper", "VS49", 49, 1080, 141, 6, 1.0, -.1),
            new DemoFamily("Vesper", "VS55", 55, 2160, 224, 7, 1.0, -.2),
            new DemoFamily("Brennick", "BR40", 40, 1080, 112, 6, .8, 0),
            new DemoFamily("Brennick", "BR75", 75, 2160, 468, 3, 1.1, -.5),
            new DemoFamily("Ustra", "U5-55", 55, 2160, 214, 6, 1.3, 0),
            new DemoFamily("Ustra", "U5-32", 32, 1080, 92, 5, .7, .1),
            new DemoFamily("Maroq", "MQ50", 50, 2160, 179, 5, .9, -.1),
            new DemoFamily("Maroq", "MQ65", 65, 2160, 305, 3, 1.2, -.3));

    private static final String[] ENDINGS = {"A1", "B2", "C", "S", "20"};

    /** One of five model numbers of the family. */
    String model(int which) {
        return beginning + ENDINGS[which % ENDINGS.length];
    }

    String panel(int which) {
        return "P" + inches + maker.charAt(0) + "-" + rows / 10 + (which % 2 == 0 ? "K" : "M");
    }
}
