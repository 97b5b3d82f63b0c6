package org.salvedge.yield.study;

import java.util.List;

/**
 * A fix tried on a fault.
 *
 * @param fault its place in the shop's list of faults
 * @param share of first tries at that fault
 * @param chance to pass
 * @param minutes median
 * @param parts cost
 */
record Way(int fault, String fix, double share, double chance, double minutes, double parts) {
    static final List<Way> ALL = List.of(
            new Way(0, "contact_mask", .7, .62, 40, 1),
            new Way(0, "reseat_cable", .3, .25, 9, 0),
            new Way(1, "rebond_film", .5, .2, 50, 5),
            new Way(1, "panel_swap", .1, .7, 70, 60),
            new Way(2, "timing_board_swap", .85, .75, 25, 22),
            new Way(2, "reseat_cable", .15, .2, 9, 0),
            new Way(3, "led_strips", .85, .8, 75, 25),
            new Way(3, "led_driver", .15, .5, 30, 10),
            new Way(4, "power_board_repair", 1, .78, 35, 12),
            new Way(5, "main_board_swap", .75, .7, 30, 30),
            new Way(5, "reflash", .25, .3, 18, 0),
            new Way(6, "reflash", 1, .75, 18, 0),
            new Way(8, "port_repair", .9, .78, 24, 4));
}
