package org.salvedge.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Problem;

/** What a person must look at in a file. */
final class Problems {
    private Problems() {}

    /** On standard error, a paragraph each; many that are alike share one. */
    static void tell(Session session, List<Problem> problems) {
        session.surroundings().out().flush();
        new Failures(session.surroundings(), false).paragraphs(ProblemGroups.paragraphs(problems));
    }

    /** Made one by one as they are written. */
    static Iterable<Map<String, @Nullable Object>> json(List<Problem> problems) {
        return () -> problems.stream().map(Problems::json).iterator();
    }

    private static Map<String, @Nullable Object> json(Problem p) {
        Map<String, @Nullable Object> one = new LinkedHashMap<>();
        one.put("file", p.file());
        one.put("sheet", p.sheet());
        one.put("row", p.row());
        one.put("column", p.column());
        one.put("found", p.found());
        one.put("problem", p.problem());
        one.put("advice", p.advice());
        return one;
    }
}
