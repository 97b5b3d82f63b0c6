package org.salvedge.ledger;

import java.time.LocalDate;
import java.time.LocalDateTime;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Grade;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.Residual;
import org.salvedge.shop.UnitId;

/** Attempts: one row a turn at the bench. */
final class AttemptTable extends Table<Attempt> {
    final Column<Attempt, Integer> number = key("attempt", Types.WHOLE, "Number of the attempt", Attempt::number);
    final Column<Attempt, UnitId> unit = required("unit", Labels.UNIT, "The set", Attempt::unit);
    final Column<Attempt, LocalDateTime> startedAt =
            required("started_at", Types.TIME, "When it began, the shop's time", Attempt::startedAt);
    final Column<Attempt, String> technician = optional("technician", Types.WORD, "Who did it", Attempt::technician);
    final Column<Attempt, Fault> fault = required("fault", Labels.FAULT, "Fault class found", Attempt::fault);
    final Column<Attempt, Fix> fix = required("fix", Labels.FIX, "Fix used; none = diagnosed only", Attempt::fix);
    final Column<Attempt, Quantity> diagnosisMinutes =
            optional("diagnosis_minutes", Types.QUANTITY, "Minutes spent finding the fault", Attempt::diagnosisMinutes);
    final Column<Attempt, Quantity> fixMinutes = optional(
            "fix_minutes", Types.QUANTITY, "Minutes spent on the fix, whether or not it worked", Attempt::fixMinutes);
    final Column<Attempt, Money> partsCost = optional("parts_cost", Types.MONEY, "Parts used", Attempt::partsCost);
    final Column<Attempt, Boolean> passed =
            optional("passed", Types.YES_NO, "Retest result; empty = no retest done", Attempt::passed);
    final Column<Attempt, Quantity> soakHours =
            optional("soak_hours", Types.QUANTITY, "Hours the set ran after the fix", Attempt::soakHours);
    final Column<Attempt, Residual> residualClose = optional(
            "residual_close", Types.oneOf(Residual.class), "What is left to see close up", Attempt::residualClose);
    final Column<Attempt, Residual> residualViewing = optional(
            "residual_viewing",
            Types.oneOf(Residual.class),
            "What is left to see at the design viewing distance",
            Attempt::residualViewing);
    final Column<Attempt, Grade> grade =
            optional("grade", Types.oneOf(Grade.class), "Grade of a set that passed", Attempt::grade);
    final Column<Attempt, Boolean> safetyTested =
            optional("safety_tested", Types.YES_NO, "Release check: electrical safety", Attempt::safetyTested);
    final Column<Attempt, Boolean> ownerDataReset =
            optional("owner_data_reset", Types.YES_NO, "Release check: former owner's data", Attempt::ownerDataReset);
    final Column<Attempt, String> note = optional("note", Types.TEXT, "Anything else", Attempt::note);

    AttemptTable() {
        super("attempt", 'A', Attempt.class);
    }

    @Override
    Attempt fact(Values<Attempt> v) {
        return new Attempt(
                v.need(number),
                v.need(unit),
                v.need(startedAt),
                v.get(technician),
                v.need(fault),
                v.need(fix),
                v.get(diagnosisMinutes),
                v.get(fixMinutes),
                v.get(partsCost),
                v.get(passed),
                v.get(soakHours),
                v.get(residualClose),
                v.get(residualViewing),
                v.get(grade),
                v.get(safetyTested),
                v.get(ownerDataReset),
                v.get(note));
    }

    @Override
    LocalDate day(Attempt f) {
        return f.startedAt().toLocalDate();
    }

    @Override
    String describe(Attempt f) {
        return "attempt " + f.number() + " on " + f.unit();
    }
}
