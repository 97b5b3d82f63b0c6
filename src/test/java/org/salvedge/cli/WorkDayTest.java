package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Fact;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** A day of thirty sets from the queue to the sale, recorded by commands, on a bench sheet and at a terminal with a scanner. */
class WorkDayTest {
    private static final int SETS = 30;
    private static final String BEGIN = "2026-03-16T05:00:00Z";
    private static final int USUAL = 12;

    @TempDir
    Path folder;

    /**
     * One turn as it went.
     *
     * @param first what is typed at the terminal when the fault is found
     * @param then what is typed at the end of the turn; null = all was said before
     */
    private record Turn(
            String fault,
            String fix,
            int diagnosis,
            int minutes,
            String parts,
            String passed,
            String grade,
            String first,
            @Nullable String then) {
        boolean pass() {
            return "yes".equals(passed);
        }
    }

    private static final List<Turn> WAYS = List.of(
            new Turn("row_drive", "contact_mask", 8, 41, "", "yes", "B", "r", ". y b so"),
            new Turn("power_board", "power_board_repair", 6, 33, "", "yes", "A", "5", ". y a so"),
            new Turn("backlight", "led_strips", 9, 74, "21.50", "yes", "A", "b", ". y a so p21.50"),
            new Turn("panel_broken", "none", 4, 0, "", "", "", "8 .", null),
            new Turn("firmware", "reflash", 7, 18, "", "yes", "A", "f", ". y a so"),
            new Turn("main_board", "main_board_swap", 10, 22, "", "no", "", "m", ". n"),
            new Turn("none_found", "none", 15, 0, "", "yes", "A", "10 . y a so", null),
            new Turn("timing_board", "reseat_cable", 12, 9, "", "no", "", "t", "res n"));

    private static Turn turn(int set) {
        return WAYS.get(set % WAYS.size());
    }

    private static String unit(int set) {
        return String.format(java.util.Locale.ROOT, "L0042-%03d", set + 1);
    }

    private TestShop open(String name) throws Exception {
        Path place = Files.createDirectories(folder.resolve(name));
        TestShop shop = new TestShop(place).at(BEGIN);
        shop.run("init", "--zone", "Europe/Berlin");
        List<Fact> facts = new ArrayList<>();
        facts.add(TestShop.lot("L0042", "900.00"));
        for (int i = 0; i < SETS; i++) {
            facts.add(TvSet.builder(new UnitId(unit(i)), new LotId("L0042"))
                    .sheet("Sheet1")
                    .line(i + 4)
                    .maker("Kestrel")
                    .model(i % 2 == 0 ? "KX-55A" : "KX-43B")
                    .family(i % 2 == 0 ? "Kestrel KX-55" : "Kestrel KX-43")
                    .inches(Quantity.of(i % 2 == 0 ? 55 : 43))
                    .claimed(Claim.UNTESTED)
                    .build());
        }
        shop.book(facts.toArray(Fact[]::new));
        return shop;
    }

    /** The sets in the order of the queue; each is a number from 0. */
    private static List<Integer> queue(TestShop shop) throws Exception {
        assertThat(shop.run("queue", "--format", "json")).as(shop.err()).isZero();
        List<Integer> order = new ArrayList<>();
        for (JsonNode row : new ObjectMapper().readTree(shop.out()).get("rows")) {
            order.add(Integer.parseInt(row.get("unit").asText().substring(6)) - 1);
        }
        assertThat(order).hasSize(SETS);
        return order;
    }

    private static void sell(TestShop shop) {
        for (int i = 0; i < SETS; i++) {
            Turn t = turn(i);
            List<String> args = new ArrayList<>();
            if (t.pass()) {
                args.addAll(List.of("sell", unit(i), "--gross", "140", "--fees", "12", "--channel", "counter"));
                if (t.fix().equals("contact_mask")) {
                    args.add("--disclosed");
                }
            } else {
                args.addAll(List.of("strip", unit(i), "--gross", "30", "--minutes", "15"));
            }
            args.addAll(List.of("--on", "2026-03-18"));
            assertThat(shop.at("2026-03-18T10:00:00Z").run(args.toArray(String[]::new)))
                    .as(shop.err())
                    .isZero();
        }
        assertThat(shop.run("audit")).as(shop.out()).isZero();
    }

    private static List<Integer> byCommands(TestShop shop) throws Exception {
        List<Integer> strokes = new ArrayList<>();
        for (int i : queue(shop)) {
            Turn t = turn(i);
            List<String> args = new ArrayList<>(List.of(
                    "attempt",
                    unit(i),
                    "--fault",
                    t.fault(),
                    "--fix",
                    t.fix(),
                    "--diagnosis-minutes",
                    String.valueOf(t.diagnosis())));
            add(args, "--fix-minutes", t.minutes() == 0 ? "" : String.valueOf(t.minutes()));
            add(args, "--parts-cost", t.parts());
            add(args, "--passed", t.passed());
            add(args, "--grade", t.grade());
            if (t.pass()) {
                args.addAll(List.of("--safety-tested", "--owner-data-reset"));
            }
            strokes.add("salvedge ".length() + String.join(" ", args).length() + 1);
            args.addAll(List.of("--technician", "Ada"));
            assertThat(shop.run(args.toArray(String[]::new))).as(shop.err()).isZero();
        }
        return strokes;
    }

    private static void add(List<String> args, String option, String value) {
        if (!value.isEmpty()) {
            args.addAll(List.of(option, value));
        }
    }

    private List<Integer> bySheet(TestShop shop) throws Exception {
        assertThat(shop.run("sheet")).as(shop.err()).isZero();
        Path sheet = shop.folder().resolve("reports/bench-2026-03-16.xlsx");
        List<Integer> strokes = new ArrayList<>();
        Map<String, Map<String, Object>> rows = new HashMap<>();
        for (int i : queue(shop)) {
            Turn t = turn(i);
            Map<String, Object> cells = new LinkedHashMap<>();
            cells.put("fault", t.fault());
            cells.put("fix", t.fix());
            cells.put("diagnosis min", t.diagnosis());
            if (t.minutes() > 0) {
                cells.put("fix min", t.minutes());
            }
            if (!t.parts().isEmpty()) {
                cells.put("parts cost", Double.valueOf(t.parts()));
            }
            cells.put("passed", t.passed());
            cells.put("grade", t.grade());
            if (t.pass()) {
                cells.put("safety tested", "yes");
                cells.put("owner data reset", "yes");
            }
            cells.values().removeIf(v -> v.equals(""));
            // Each cell with the key that leaves it.
            strokes.add(cells.values().stream()
                    .mapToInt(v -> String.valueOf(v).length() + 1)
                    .sum());
            rows.put(unit(i), cells);
        }
        SheetTest.fillAll(sheet, rows);
        assertThat(shop.run("sheet", "--return", sheet.toString(), "--technician", "Ada"))
                .as(shop.err())
                .isZero();
        return strokes;
    }

    private static List<Integer> atTheTerminal(TestShop shop) throws Exception {
        List<Integer> strokes = new ArrayList<>();
        List<String> lines = new ArrayList<>();
        for (int i : queue(shop)) {
            Turn t = turn(i);
            lines.add(unit(i)); // scanned
            lines.add("later PT" + t.diagnosis() + "M");
            lines.add(t.first());
            int typed = t.first().length() + 1;
            if (t.then() != null) {
                lines.add("later PT" + t.minutes() + "M");
                lines.add(t.then());
                typed += t.then().length() + 1;
            }
            strokes.add(typed);
        }
        lines.add("q");
        assertThat(shop.answering(lines.toArray(String[]::new)).run("bench", "--technician", "Ada"))
                .as(shop.err())
                .isZero();
        return strokes;
    }

    /** The shop's record as it travels; when a turn began is left out: only the terminal knows it to the minute. */
    private static Map<String, String> record(TestShop shop) throws Exception {
        assertThat(shop.run("export", "out")).as(shop.err()).isZero();
        Map<String, String> files = new LinkedHashMap<>();
        for (String name : List.of("lots.csv", "units.csv", "attempts.csv", "exits.csv", "comebacks.csv")) {
            String text = Files.readString(shop.folder().resolve("out").resolve(name));
            files.put(name, text.replaceAll("2026-03-16T[0-9:]{8}", "that day"));
        }
        return files;
    }

    @Test
    void threeWaysOfRecordingADayLeaveTheSameLedger() throws Exception {
        TestShop commands = open("commands");
        TestShop sheet = open("sheet");
        TestShop terminal = open("terminal");
        List<Integer> byCommand = byCommands(commands);
        List<Integer> bySheet = bySheet(sheet);
        List<Integer> typed = atTheTerminal(terminal);
        sell(commands);
        sell(sheet);
        sell(terminal);
        assertThat(record(sheet)).isEqualTo(record(commands));
        assertThat(record(terminal)).isEqualTo(record(commands));
        // Without parts to write down a turn takes twelve key strokes at most, beside the scan.
        for (int n = 0; n < SETS; n++) {
            assertThat(typed.get(n)).isLessThanOrEqualTo(USUAL + "p21.50 ".length());
        }
        assertThat(typed.stream().filter(n -> n <= USUAL).count()).isGreaterThanOrEqualTo(26);
        // The figures of docs/bench-study.md.
        assertThat(mean(byCommand)).isCloseTo(140.8, within(.05));
        assertThat(mean(bySheet)).isCloseTo(37.2, within(.05));
        assertThat(mean(typed)).isCloseTo(10.1, within(.05));
    }

    private static double mean(List<Integer> strokes) {
        return strokes.stream().mapToInt(Integer::intValue).average().orElseThrow();
    }
}
