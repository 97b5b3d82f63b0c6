package org.salvedge.cli;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.salvedge.bench.ReleaseChecks;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Grade;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.Residual;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;
import org.salvedge.worth.turn.OpenBench;
import org.salvedge.worth.turn.Prospect;
import org.salvedge.worth.turn.Stop;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** At the bench: one turn with one set. */
@picocli.CommandLine.Command(
        description = "Record a turn at the bench: fault, fix, minutes, parts and retest.",
        footer = {
            "",
            "Faults: row_drive (horizontal lines), column_drive (vertical lines), timing_board, backlight, power_board,",
            "main_board, firmware, panel_broken, ports_audio, none_found, unknown.",
            "Fixes: contact_mask, reseat_cable, rebond_film, timing_board_swap, led_strips, led_driver, power_board_repair,",
            "main_board_swap, reflash, panel_swap, port_repair, none (diagnosed only).",
            "A shop adds its own under [codes] in shop.toml. An unambiguous beginning is enough.",
            "Grades: A nothing seen at the design viewing distance or close up; B nothing seen at the design viewing distance;",
            "C seen, and told to the buyer.",
            "",
            "Example: salvedge attempt L0042-007 --fault row_drive --fix contact_mask --fix-minutes 41"
        })
final class AttemptCommand extends Recording {
    private static final int FEWEST_ROWS = 480;
    private static final int MOST_ROWS = 8640;

    private static final double SHORT_WORK = 30;

    private @Nullable Attempt recorded;

    @Parameters(paramLabel = "UNIT", description = "The set's label, or enough of it to be the only one.")
    String unit = "";

    @Option(names = "--fault", required = true, paramLabel = "CODE", description = "Fault class found.")
    String fault = "";

    @Option(names = "--fix", required = true, paramLabel = "CODE", description = "Fix used; none = diagnosed only.")
    String fix = "";

    @Option(names = "--diagnosis-minutes", paramLabel = "N", description = "Minutes spent finding the fault.")
    @Nullable
    Quantity diagnosisMinutes;

    @Option(
            names = "--fix-minutes",
            paramLabel = "N",
            description = "Minutes spent on the fix, whether or not it worked.")
    @Nullable
    Quantity fixMinutes;

    @Option(names = "--parts-cost", paramLabel = "AMOUNT", description = "Parts used.")
    @Nullable
    Amount partsCost;

    @Option(
            names = "--part",
            paramLabel = "LABEL",
            description = "A part out of stock that was used; its value is added to the parts.")
    List<String> parts = new ArrayList<>();

    @Option(
            names = "--passed",
            paramLabel = "yes|no",
            arity = "1",
            description = "Retest result; left out = no retest: given up, or still open.")
    @Nullable
    Boolean passed;

    @Option(names = "--soak-hours", paramLabel = "H", description = "Hours the set ran after the fix.")
    @Nullable
    Quantity soakHours;

    @Option(
            names = "--residual-close",
            paramLabel = "none|faint|visible",
            description = "What is left to see close up.")
    @Nullable
    Residual residualClose;

    @Option(
            names = "--residual-viewing",
            paramLabel = "none|faint|visible",
            description = "What is left to see at the design viewing distance.")
    @Nullable
    Residual residualViewing;

    @Option(names = "--grade", paramLabel = "A|B|C", description = "Grade of a set that passed.")
    @Nullable
    Grade grade;

    @Option(names = "--safety-tested", description = "It was tested for electrical safety.")
    boolean safetyTested;

    @Option(names = "--owner-data-reset", description = "The former owner's accounts and data are gone.")
    boolean ownerDataReset;

    @Option(
            names = "--at",
            paramLabel = "DATETIME",
            description = "When it began, as in 2026-03-14T09:05 (default: now).")
    @Nullable
    LocalDateTime at;

    @Option(
            names = "--technician",
            paramLabel = "NAME",
            description = "Who did it (default: SALVEDGE_TECHNICIAN, where it is set).")
    @Nullable
    String technician;

    @Option(names = "--note", paramLabel = "TEXT", description = "Anything else.")
    @Nullable
    String note;

    @Option(
            names = "--model",
            paramLabel = "MODEL",
            description = "Model on the rear label, where the manifest is wrong.")
    @Nullable
    String model;

    @Option(names = "--panel", paramLabel = "MODEL", description = "Model number on the panel's own label.")
    @Nullable
    String panel;

    @Option(names = "--rows", paramLabel = "N", description = "Vertical resolution: 720, 1080, 2160, 4320.")
    @Nullable
    Integer rows;

    @Option(names = "--serial", paramLabel = "TEXT", description = "Serial number.")
    @Nullable
    String serial;

    /** Release checks are asked for at the retest where somebody can be asked; what is left open is asked again at the sale. */
    @Override
    void prepare(Session session, Ledger ledger) {
        if (!Boolean.TRUE.equals(passed) || !session.terminal().asks()) {
            return;
        }
        UnitId of = UnitPick.unit(ledger, unit);
        for (ReleaseChecks.Check check : BenchRelease.open(ledger.entriesOf(of))) {
            boolean tested = check == ReleaseChecks.Check.SAFETY_TESTED;
            if (!(tested ? safetyTested : ownerDataReset)) {
                boolean done = new ReleaseQuestions(session.terminal(), of).done(check);
                safetyTested |= tested && done;
                ownerDataReset |= !tested && done;
            }
        }
    }

    @Override
    List<Put> record(Session session, Ledger ledger) {
        if (rows != null && (rows < FEWEST_ROWS || rows > MOST_ROWS)) {
            throw new Usage("--rows: " + rows + " is no screen's; most have 720, 1080, 2160 or 4320 rows");
        }
        List<Put> put = new ArrayList<>();
        Entry set = UnitPick.entry(ledger, UnitPick.unit(ledger, unit));
        TvSet known = UnitPick.set(set);
        if (panel != null || rows != null || serial != null || model != null) {
            TvSet found = found(session, ledger, known);
            if (!found.equals(known)) {
                put.add(amend(ledger, set.number(), found, "seen at the bench"));
            }
        }
        int number = ledger.nextAttempt();
        if (number == 1) {
            Cautions.say(session);
        }
        Attempt turn = attempt(session, ledger, number, known.unit());
        recorded = turn;
        put.addAll(put(ledger, List.of(turn)));
        put.addAll(PartUse.use(ledger, parts, turn));
        return put;
    }

    /** A set that has had more than its time: said here, in shops of a size that is read in a moment. */
    @Override
    void afterwards(Session session, Ledger ledger) {
        Attempt turn = recorded;
        if (turn == null || Boolean.TRUE.equals(turn.passed()) || ledger.nextAttempt() > BenchPlan.QUICKLY_READ) {
            return;
        }
        List<Attempt> turns = SetNotes.attempts(ledger.entriesOf(turn.unit()));
        if (SetNotes.minutes(turns).toDouble() < SHORT_WORK) {
            return;
        }
        BenchPlan plan = BenchPlan.of(session, ledger, null, 0);
        OpenBench open = plan.open(turn.unit().value());
        if (open == null) {
            return;
        }
        Stop stop = plan.stopFromNew(open, turn.fault());
        boolean past = open.what().spent() > stop.minute();
        Prospect ahead = plan.prospect(open.what());
        if (ahead.gain() <= 0) {
            session.remark(turn.unit() + " has had " + SetNotes.minutes(turns) + " min"
                    + (stop.minute() > 0 && past ? ", its stop minute is " + stop.words() : "")
                    + ": going on is expected to lose money. Better: "
                    + plan.otherwise(open).code());
        } else if (stop.minute() > 0 && past) {
            session.remark(turn.unit() + " has had " + SetNotes.minutes(turns) + " min, its stop minute is "
                    + stop.words()
                    + String.format(
                            Locale.ROOT,
                            ": a further turn would bring %.0f in %.0f min",
                            ahead.gain(),
                            ahead.minutes()));
        }
    }

    private TvSet found(Session session, Ledger ledger, TvSet known) {
        TvSet.Builder found = known.toBuilder();
        if (panel != null) {
            found.panel(panel);
        }
        if (rows != null) {
            found.rows(rows);
        }
        if (serial != null) {
            found.serial(serial);
        }
        if (model != null && !model.equals(known.model())) {
            String listed = known.listedModel() == null ? known.model() : known.listedModel();
            found.model(model)
                    .listedModel(known.line() == null || listed.equals(model) ? null : listed)
                    .family(Models.of(session, ledger).family(model));
        }
        return found.build();
    }

    private Attempt attempt(Session session, Ledger ledger, int number, UnitId of) {
        String by = technician == null ? session.surroundings().environment().get("SALVEDGE_TECHNICIAN") : technician;
        return new Attempt(
                number,
                of,
                at == null ? session.now() : at,
                by == null || by.isBlank() ? null : by.strip(),
                CodePick.fault(session, "--fault", fault),
                CodePick.fix(session, "--fix", fix),
                diagnosisMinutes,
                fixMinutes,
                PartUse.cost(
                        ledger,
                        parts,
                        Amount.orNull(partsCost, session.shop().settings().currency(), "--parts-cost")),
                passed,
                soakHours,
                residualClose,
                residualViewing,
                grade,
                safetyTested ? Boolean.TRUE : null,
                ownerDataReset ? Boolean.TRUE : null,
                note);
    }
}
