package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecordingTest {
    private static final String[] NOTHING = {};

    private TestShop shop;

    @BeforeEach
    void open(@TempDir Path folder) {
        shop = TestShop.withLot(folder);
    }

    @Test
    void anAttemptIsSaidInOneLineWithItsEntry() {
        int status = shop.run(
                "attempt",
                "L0042-001",
                "--fault",
                "row_drive",
                "--fix",
                "contact_mask",
                "--diagnosis-minutes",
                "11",
                "--fix-minutes",
                "30",
                "--passed",
                "yes",
                "--grade",
                "B");
        assertThat(shop.out()).isEqualTo("entry 5: L0042-001 row_drive, contact_mask, 41 min, passed, grade B\n");
        assertThat(status).isZero();
    }

    @Test
    void anAttemptBeganNowUnlessSaidOtherwise() {
        shop.run("attempt", "001", "--fault", "backlight", "--fix", "none");
        shop.run("attempt", "001", "--fault", "backlight", "--fix", "none", "--at", "2026-03-13 09:05");
        shop.run("show", "001");
        assertThat(shop.out()).contains("2026-03-14 12:00 L0042-001 backlight", "2026-03-13 09:05 L0042-001 backlight");
    }

    @Test
    void theTechnicianMayStandInTheEnvironment() {
        shop.with("SALVEDGE_TECHNICIAN", "Ines").run("attempt", "001", "--fault", "backlight", "--fix", "none");
        assertThat(shop.out()).endsWith(", by Ines\n");
    }

    @Test
    void anUnambiguousBeginningOfACodeIsTakenAndSaid() {
        shop.run("attempt", "001", "--fault", "back", "--fix", "led_s");
        assertThat(shop.err()).endsWith("--fault back: taken as backlight\n--fix led_s: taken as led_strips\n");
        assertThat(shop.out()).contains("backlight, led_strips");
    }

    @Test
    void whatTheBenchSeesOfTheSetIsKeptBesideWhatWasListed() {
        shop.run(
                "attempt",
                "001",
                "--fault",
                "backlight",
                "--fix",
                "none",
                "--model",
                "KX-55B",
                "--panel",
                "P55-1",
                "--rows",
                "2160",
                "--serial",
                "S1");
        assertThat(shop.out())
                .contains(
                        "entry 5: L0042-001 Kestrel KX-55B",
                        "listed as KX-55A",
                        "2160 rows",
                        "panel P55-1",
                        "serial S1")
                .contains("family Kestrel KX-55")
                .contains("entry 6: L0042-001 backlight");
    }

    @Test
    void aLabelThatIsNotEnoughListsTheCandidates() {
        int status = shop.run("attempt", "L0042", "--fault", "backlight", "--fix", "none");
        assertThat(shop.err()).contains("\"L0042\" may be L0042-001, L0042-002, L0042-003; write more of the label");
        assertThat(status).isEqualTo(Status.REFUSED);
    }

    @Test
    void anUnknownLabelIsRefused() {
        assertThat(shop.run("attempt", "X9", "--fault", "backlight", "--fix", "none"))
                .isEqualTo(Status.REFUSED);
        assertThat(shop.err()).contains("no set has the label \"X9\"");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = ';', textBlock = """
        negative minutes        ; 2 ; --fix-minutes: "-5" must not be negative                ; attempt 001 --fault backlight --fix led_strips --fix-minutes -5
        unknown fault           ; 2 ; --fault: "backlite" is not a known code. Did you mean backlight? ; attempt 001 --fault backlite --fix none
        ambiguous fix           ; 2 ; --fix: "led" may be led_strips, led_driver              ; attempt 001 --fault backlight --fix led
        neither yes nor no      ; 2 ; --passed: "perhaps" is neither yes nor no               ; attempt 001 --fault backlight --fix led_strips --passed perhaps
        no number               ; 2 ; --parts-cost: "12,50" is not a number                   ; attempt 001 --fault backlight --fix led_strips --parts-cost 12,50
        too many decimals       ; 2 ; has more decimals than EUR                              ; attempt 001 --fault backlight --fix led_strips --parts-cost 12.505
        no such grade           ; 2 ; --grade: "D" is none of A, B, C                         ; attempt 001 --fault backlight --fix led_strips --grade D
        no such day             ; 2 ; --at: "2026-02-30T10:00" is not a date and time         ; attempt 001 --fault backlight --fix none --at 2026-02-30T10:00
        missing option          ; 2 ; missing: --fix CODE                                     ; attempt 001 --fault backlight
        unknown option          ; 2 ; "--fautl" is not an option. Did you mean --fault?       ; attempt 001 --fautl backlight --fix none
        one word too many       ; 2 ; "002" is one word too many                              ; attempt 001 002 --fault backlight --fix none
        a day in the future     ; 3 ; is in the future. Today is 2026-03-14                   ; attempt 001 --fault backlight --fix none --at 2026-03-15T10:00
        before it was received  ; 3 ; is before the day the set was received                  ; attempt 001 --fault backlight --fix none --at 2026-03-01T10:00
        a pass of nothing       ; 3 ; a pass needs a fix or a finding                         ; attempt 001 --fault unknown --fix none --passed yes
        a grade without a pass  ; 3 ; grade A on a set that did not pass                      ; attempt 001 --fault backlight --fix led_strips --passed no --grade A
        a comeback of no sale   ; 3 ; is of a set that was not sold at that time              ; comeback 001
        no such command         ; 2 ; "attemt" is not a command. Did you mean attempt?        ; attemt 001
        no such format          ; 2 ; --format: "xml" is none of table, csv, json                      ; show 001 --format xml
        no such entry           ; 3 ; there is no entry 99                                    ; undo 99 --why slip
        amend without a column  ; 2 ; name what to change                                     ; amend 2 --why slip
        amend an unknown column ; 3 ; a row of units has no column "colour"                   ; amend 2 --colour red --why slip
        amend to the same       ; 3 ; says so already                                         ; amend 2 --maker Kestrel --why slip
        amend to nonsense       ; 3 ; inches: "wide" is not a number                          ; amend 2 --inches wide --why slip
        an empty reason         ; 2 ; --why: give the reason in words                         ; undo --why ""
        sold twice              ; 3 ; is after the set has gone                               ; sell 003 003 --gross 10
        """)
    void badInputIsRefusedAndChangesNothing(String what, int status, String message, String line) {
        String before = everything();
        String[] args = line.strip().split(" ");
        for (int i = 0; i < args.length; i++) {
            args[i] = args[i].equals("\"\"") ? "" : args[i];
        }
        if (what.equals("sold twice")) {
            shop.run("lost", "003");
            before = everything();
            args = new String[] {"strip", "003", "--gross", "10"};
        }
        assertThat(shop.run(args)).as(shop.err()).isEqualTo(status);
        assertThat(oneLine(shop.err())).contains("salvedge: ").contains(message.strip());
        assertThat(shop.out()).isEmpty();
        assertThat(everything()).isEqualTo(before);
    }

    private String everything() {
        StringBuilder all = new StringBuilder();
        for (String unit : new String[] {"L0042", "L0042-001", "L0042-002", "L0042-003"}) {
            shop.run("show", unit);
            all.append(shop.out());
        }
        return all.toString();
    }

    /** Messages are broken into lines at spaces. */
    private static String oneLine(String text) {
        return text.replaceAll("\n +", " ");
    }

    @Test
    void setsSoldForOneSumShareItToTheCent() {
        shop.run(
                "sell",
                "003",
                "001",
                "002",
                "--gross",
                "100",
                "--fees",
                "0.02",
                "--minutes",
                "10",
                "--unmet",
                "to a dealer");
        assertThat(shop.out()).isEqualTo("""
                        entry 5: L0042-001 sold, for 33.34, fees 0.01, 3.333334 min, release checks unmet: "to a dealer"
                        entry 6: L0042-002 sold, for 33.33, fees 0.01, 3.333333 min, release checks unmet: "to a dealer"
                        entry 7: L0042-003 sold, for 33.33, fees 0.00, 3.333333 min, release checks unmet: "to a dealer"
                        """);
    }

    @Test
    void aSaleOfSeveralIsWholeOrAbsent() {
        shop.run("lost", "003");
        String before = everything();
        int status = shop.run("sell", "001", "002", "003", "--gross", "90", "--unmet", "x");
        assertThat(status).isEqualTo(Status.REFUSED);
        assertThat(oneLine(shop.err())).contains("exit of L0042-003 on 2026-03-14", "after the set has gone");
        assertThat(everything()).isEqualTo(before);
    }

    @Test
    void partsOfASetMayBringMoneyWhileItStays() {
        shop.run("strip", "001", "--gross", "12", "--gone", "no");
        shop.run("strip", "001", "--gross", "8", "--gone", "no");
        assertThat(shop.run("attempt", "001", "--fault", "backlight", "--fix", "none"))
                .isZero();
        assertThat(shop.run("recycle", "001", "--fees", "5")).isZero();
        assertThat(shop.out()).isEqualTo("entry 8: L0042-001 recycled, fees 5.00\n");
    }

    @Test
    void releaseChecksOfASaleThatIsRecordedLaterStandOnTheDayOfTheSale() {
        assertThat(shop.run(
                        "sell", "001", "--gross", "90", "--on", "2026-03-10", "--safety-tested", "--owner-data-reset"))
                .as(shop.err())
                .isZero();
        assertThat(shop.out()).contains("L0042-001 sold, for 90.00").contains("safety tested, owner data reset");
        assertThat(shop.run("audit")).as(shop.out()).isZero();
    }

    @Test
    void aSaleCanComeBackAndTheSetBeSoldAgain() {
        shop.run("sell", "001", "--gross", "120", "--unmet", "x");
        assertThat(shop.run(
                        "comeback", "001", "--fault", "backlight", "--refund", "120", "--cost", "9.5", "--restocked"))
                .isZero();
        assertThat(shop.out())
                .isEqualTo("entry 6: L0042-001 came back, in stock again, backlight, refund 120.00, cost 9.50\n");
        assertThat(shop.at("2026-03-15T11:00:00Z").run("send-back", "001", "--gross", "30"))
                .as(shop.err())
                .isZero();
        assertThat(shop.out()).isEqualTo("entry 7: L0042-001 returned to the seller, credit 30.00\n");
    }

    @Test
    void aPriceSetTwiceOnOneDayIsOnePrice() {
        shop.run("offer", "001", "--price", "150", "--channel", "market");
        assertThat(shop.out()).isEqualTo("entry 5: L0042-001 offered at 150.00, on market\n");
        shop.run("offer", "001", "140");
        assertThat(shop.out()).isEqualTo("entry 6: L0042-001 offered at 140.00\n");
        shop.run("show", "001");
        assertThat(shop.out()).contains("[no longer: see entry 6]", "[in place of entry 5]");
    }

    @Test
    void aSetHasAPlaceAndMayWaitForAPart() {
        shop.run("place", "001", "002", "bay 3");
        assertThat(shop.out()).isEqualTo("entry 5: L0042-001 at bay 3\nentry 6: L0042-002 at bay 3\n");
        shop.run("wait", "001", "led strips", "--expected-on", "2026-04-01");
        assertThat(shop.out()).isEqualTo("entry 7: L0042-001 waits for led strips, expected on 2026-04-01\n");
        shop.run("wait", "001", "--waiting-for", "");
        assertThat(shop.out()).isEqualTo("entry 8: L0042-001 waits no longer\n");
        shop.run("show", "--entry", "8");
        assertThat(shop.out()).contains("  place: bay 3\n").doesNotContain("  waiting_for");
    }

    @Test
    void anEntryIsAmendedByOneThatTakesItsPlace() {
        shop.run(
                "attempt",
                "001",
                "--fault",
                "backlight",
                "--fix",
                "led_strips",
                "--fix-minutes",
                "50",
                "--passed",
                "yes");
        assertThat(shop.run("amend", "5", "--fix-minutes", "30", "--passed=no", "--why", "misread the clock"))
                .isZero();
        assertThat(shop.out()).isEqualTo("entry 6: L0042-001 backlight, led_strips, 30 min, failed\n");
        shop.run("show", "--entry", "5");
        assertThat(shop.out())
                .contains("50 min, passed [no longer: see entry 6]")
                .contains("then entry 6: ")
                .contains("[why: misread the clock]");
    }

    @Test
    void undoTakesTheLatestEntryBackUnlessOneIsNamed() {
        shop.run("lost", "001");
        assertThat(shop.run("undo", "--why", "found it")).isZero();
        assertThat(shop.out()).isEqualTo("entry 6: undoes entry 5, L0042-001 lost\n");
        assertThat(shop.run("strip", "001", "--gross", "20")).isZero();
    }

    @Test
    void anEntryOnWhichLaterOnesRestIsNotUndone() {
        shop.run("sell", "001", "--gross", "120", "--unmet", "x");
        shop.run("comeback", "001", "--restocked");
        assertThat(shop.run("undo", "5", "--why", "slip")).isEqualTo(Status.REFUSED);
        assertThat(oneLine(shop.err())).contains("later entries rest on it", "entry 6");
    }

    @Test
    void aNumberOfRowsThatNoScreenHasIsRefused() {
        assertThat(shop.run("attempt", "001", "--fault", "backlight", "--fix", "none", "--rows", "55"))
                .isEqualTo(Status.USAGE);
        assertThat(shop.err()).contains("--rows: 55 is no screen's");
    }

    @Test
    void helpNamesTheOptionsAndChangesNothing() {
        assertThat(shop.run("attempt", "--help")).isZero();
        assertThat(shop.out()).contains("--diagnosis-minutes", "--residual-viewing", "contact_mask");
        assertThat(shop.run(NOTHING)).isEqualTo(Status.USAGE);
    }
}
