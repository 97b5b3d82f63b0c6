package org.salvedge.cli;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MaskTest {
    @TempDir
    Path folder;

    private static JsonNode json(TestShop shop) throws Exception {
        return new ObjectMapper().readTree(shop.out());
    }

    /** Contacts that are culprits rather than not. */
    private static List<Integer> likely(TestShop shop) throws Exception {
        List<Integer> likely = new ArrayList<>();
        JsonNode posterior = json(shop).get("posterior");
        for (int i = 0; i < posterior.size(); i++) {
            if (posterior.get(i).asDouble() > .75) {
                likely.add(i + 1);
            } else {
                assertThat(posterior.get(i).asDouble()).isLessThan(.25);
            }
        }
        return likely;
    }

    @Test
    void aPlanIsAnsweredInTheAgreedForm() throws Exception {
        TestShop shop = new TestShop(folder);
        int status = shop.run(
                "mask",
                "plan",
                "--panel",
                "P55-1234",
                "--contacts",
                "7",
                "--tried",
                "1,2,3=good;1,2=bad",
                "--format",
                "json");
        assertThat(status).as(shop.err()).isZero();
        JsonNode plan = json(shop);
        assertThat(plan.get("panel").asText()).isEqualTo("P55-1234");
        assertThat(plan.get("contacts").asInt()).isEqualTo(7);
        assertThat(plan.get("tried").asInt()).isEqualTo(2);
        assertThat(plan.get("done").asBoolean()).isFalse();
        // Contact 3 is a culprit for sure, 4 to 7 are none, 1 and 2 keep their chance.
        assertThat(plan.get("posterior").get(2).asDouble()).isEqualTo(1);
        assertThat(plan.get("posterior").get(0).asDouble()).isCloseTo(.3, within(1e-6));
        assertThat(plan.get("posterior").get(5).asDouble()).isZero();
        assertThat(plan.get("mask").isNull()).isTrue();
        assertThat(plan.get("next").size()).isPositive();
        assertThat(plan.get("expected_trials").asDouble()).isBetween(1.0, 2.0);
    }

    @Test
    void aPlanThatIsDoneNamesTheMask() throws Exception {
        TestShop shop = new TestShop(folder);
        shop.run(
                "mask",
                "plan",
                "--panel",
                "P",
                "--contacts",
                "2",
                "--prior",
                "one",
                "--tried",
                "1=bad",
                "--format",
                "json");
        assertThat(json(shop).get("done").asBoolean()).isTrue();
        assertThat(json(shop).get("mask").toString()).isEqualTo("[2]");
        assertThat(json(shop).get("next").isNull()).isTrue();
    }

    @Test
    void trialsThatContradictEachOtherAreRefusedAndMisspeltOnesAreUsage() {
        TestShop shop = new TestShop(folder);
        assertThat(shop.run("mask", "plan", "--panel", "P", "--contacts", "3", "--tried", "1,2,3=bad"))
                .isEqualTo(3);
        assertThat(shop.err()).contains("contradict").contains("--not-here");
        assertThat(shop.run("mask", "plan", "--panel", "P", "--contacts", "3", "--tried", "1,9=bad"))
                .isEqualTo(2);
        assertThat(shop.err()).contains("\"9\" is not a contact");
        assertThat(shop.run("mask", "plan", "--panel", "P", "--contacts", "17")).isEqualTo(2);
        assertThat(shop.run("mask")).isEqualTo(2);
        assertThat(shop.run("mask", "plan", "--help")).isZero();
        assertThat(shop.out()).contains("salvedge mask plan").contains("Example");
    }

    @Test
    void recipesOfThePanelAreThePriorAndThoseOfTheOtherSideByTheNamesOfTheirSignals() throws Exception {
        TestShop shop = TestShop.withLot(folder);
        for (int i = 0; i < 5; i++) {
            assertThat(shop.run(
                            "mask",
                            "record",
                            "--panel",
                            "P55",
                            "--side",
                            "left",
                            "--contacts",
                            "2 4",
                            "--signals",
                            "CKV STV",
                            "--good",
                            "yes"))
                    .as(shop.err())
                    .isZero();
        }
        shop.run("mask", "recipes", "--format", "json");
        JsonNode recipe = json(shop).get("rows").get(0);
        assertThat(recipe.get("used").asInt()).isEqualTo(5);
        assertThat(recipe.get("good").asInt()).isEqualTo(5);
        assertThat(recipe.get("share").asDouble()).isBetween(.5, .99);
        shop.run("mask", "plan", "--panel", "P55", "--contacts", "4", "--side", "left", "--format", "json");
        assertThat(likely(shop)).containsExactly(2, 4);
        shop.run("mask", "plan", "--panel", "P55", "--contacts", "4", "--side", "left");
        assertThat(shop.out()).contains("Or first the recipe: mask 2 4 (good 5 of 5)");
        shop.run(
                "mask",
                "plan",
                "--panel",
                "P55",
                "--contacts",
                "4",
                "--side",
                "right",
                "--signals",
                "STV OE VGH CKV",
                "--format",
                "json");
        assertThat(likely(shop)).containsExactly(1, 4);
        shop.run("mask", "plan", "--panel", "P55", "--contacts", "4", "--side", "right");
        assertThat(shop.out()).contains("assumed");
        assertThat(shop.run("audit")).isZero();
    }

    @Test
    void theRecipeBookTravelsAsCsvAndKnownRecipesAreLeftAsTheyAre() throws Exception {
        TestShop one = TestShop.withLot(folder.resolve("one"));
        one.run("mask", "record", "--panel", "P55", "--side", "left", "--contacts", "4 2", "--good", "no");
        one.run(
                "mask",
                "record",
                "--panel",
                "P55",
                "--side",
                "right",
                "--contacts",
                "1",
                "--note",
                "a \"quoted\", note");
        assertThat(one.run("mask", "export", "masks.csv")).as(one.err()).isZero();
        String csv = Files.readString(folder.resolve("one/masks.csv"));
        assertThat(csv).startsWith("panel,side,contacts,signals,residual_close,residual_viewing,used,good,note\r\n");
        TestShop two = TestShop.withLot(folder.resolve("two"));
        String file = folder.resolve("one/masks.csv").toString();
        assertThat(two.run("mask", "import", file)).as(two.err()).isZero();
        assertThat(two.out()).contains("2 recipes added");
        assertThat(two.run("mask", "import", file)).isZero();
        assertThat(two.out()).contains("0 recipes added");
        two.run("mask", "record", "--panel", "P55", "--side", "left", "--contacts", "2 4", "--good", "yes");
        assertThat(two.run("mask", "import", file)).isEqualTo(1);
        assertThat(two.err()).contains("left as it is").contains("used 2, good 1");
        two.run("mask", "export", "again.csv");
        assertThat(Files.readString(folder.resolve("two/again.csv"))).contains("P55,left,2 4,,,,2,1,");
    }

    @Test
    void noTextOfARecipeFileIsAFormulaAndEachComesBackAsItWas() throws Exception {
        TestShop one = TestShop.withLot(folder.resolve("one"));
        String[] notes = {"=HYPERLINK(\"x\")", "'-1", "\uff1d1+1", "it's"};
        for (int i = 0; i < notes.length; i++) {
            one.run("mask", "record", "--panel", "@P" + i, "--side", "left", "--contacts", "1", "--note=" + notes[i]);
        }
        assertThat(one.run("mask", "export", "masks.csv")).as(one.err()).isZero();
        Path file = folder.resolve("one/masks.csv");
        assertThat(Files.readString(file))
                .contains("'@P0,left,1,,,,,,\"'=HYPERLINK(\"\"x\"\")\"")
                .contains("'@P1,left,1,,,,,,''-1")
                .contains("'@P2,left,1,,,,,,'\uff1d1+1")
                .contains("'@P3,left,1,,,,,,it's");
        TestShop two = TestShop.withLot(folder.resolve("two"));
        assertThat(two.run("mask", "import", file.toString())).as(two.err()).isZero();
        two.run("mask", "recipes", "--format", "json");
        JsonNode rows = json(two).get("rows");
        for (int i = 0; i < notes.length; i++) {
            assertThat(rows.get(i).get("panel").asText()).isEqualTo("@P" + i);
        }
        two.run("mask", "export", "again.csv");
        assertThat(Files.readString(folder.resolve("two/again.csv"))).isEqualTo(Files.readString(file));
    }

    @Test
    void aRecipeFileInOtherLettersOrWithoutAFolderIsTold() throws Exception {
        TestShop shop = TestShop.withLot(folder);
        Files.write(
                folder.resolve("old.csv"), "panel,side,contacts,note\r\nP1,left,1,caf\u00e9\r\n".getBytes(ISO_8859_1));
        assertThat(shop.run("mask", "import", "old.csv")).isEqualTo(3);
        assertThat(shop.err()).contains("old.csv is not UTF-8 text").contains("Save it as CSV in UTF-8");
        assertThat(shop.run("mask", "export", "nowhere/masks.csv")).isEqualTo(4);
        assertThat(shop.err()).contains("there is no folder");
        assertThat(folder.resolve("nowhere")).doesNotExist();
    }

    @Test
    void aRecipeFileWithABadRowChangesNothing() throws Exception {
        TestShop shop = TestShop.withLot(folder);
        Files.writeString(folder.resolve("bad.csv"), "panel,side,contacts\r\nP1,left,1 2\r\nP2,top,3\r\n,left,1\r\n");
        assertThat(shop.run("mask", "import", "bad.csv")).isEqualTo(3);
        assertThat(shop.err())
                .contains("row 3")
                .contains("\"top\"")
                .contains("row 4")
                .contains("panel");
        shop.run("mask", "recipes");
        assertThat(shop.out()).contains("No recipe yet");
        Files.writeString(folder.resolve("bad.csv"), "panel,side,contacts,colour\r\nP1,left,1 2,red\r\n");
        assertThat(shop.run("mask", "import", "bad.csv")).isEqualTo(3);
        assertThat(shop.err()).contains("\"colour\" is not a column of recipes");
    }

    @Test
    void theWalkAsksOnATerminalForWhatIsNotSaid() {
        TestShop shop = TestShop.withLot(folder).answering("1", "band", "2", "l");
        assertThat(shop.run("mask", "walk", "L0042-001")).as(shop.err()).isZero();
        assertThat(shop.questions()).hasSize(4);
        assertThat(shop.out())
                .contains("Likely row_drive; fix: contact_mask")
                .contains("left")
                .contains("Judge the picture from 2.18 m (7.2 ft) at 1080 rows, or 1.09 m (3.6 ft) at 2160 rows");
        assertThat(new TestShop(folder).run("mask", "walk")).isEqualTo(2);
    }

    @Test
    void aSetShowsTheDistanceToJudgeItFrom() {
        TestShop shop = TestShop.withLot(folder);
        shop.run("attempt", "L0042-001", "--fault", "row_drive", "--fix", "none", "--rows", "2160", "--panel", "P55");
        shop.run("show", "L0042-001");
        // 55 in, 16:9: 68.489 cm high; 1 / (2160 tan 1') = 1.592 heights (ITU-R BT.2022).
        assertThat(shop.out()).contains("Judge the picture from 1.09 m (3.6 ft) at 2160 rows");
        shop.run("mask", "plan", "--unit", "L0042-001", "--contacts", "3");
        assertThat(shop.out()).contains("1.09 m").contains("trials to come");
    }
}
