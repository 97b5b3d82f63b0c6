package org.salvedge.cli;

import java.util.List;
import java.util.Map;
import org.salvedge.shop.Coded;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Nearest;

/** A code as typed becomes a code in force: the code itself, or a beginning that only one has. What was taken is said. */
final class CodePick {
    private CodePick() {}

    static Fault fault(Session session, String option, String typed) {
        return of(session, option, typed, session.shop().settings().codes().faults());
    }

    static Fix fix(Session session, String option, String typed) {
        return of(session, option, typed, session.shop().settings().codes().fixes());
    }

    private static <C extends Coded> C of(Session session, String option, String typed, Map<C, String> codes) {
        for (C code : codes.keySet()) {
            if (code.code().equals(typed)) {
                return code;
            }
        }
        List<C> begin = codes.keySet().stream()
                .filter(c -> !typed.isEmpty() && c.code().startsWith(typed))
                .toList();
        if (begin.size() == 1) {
            session.remark(option + " " + typed + ": taken as " + begin.get(0).code());
            return begin.get(0);
        }
        List<String> all = codes.keySet().stream().map(Coded::code).toList();
        if (begin.size() > 1) {
            throw new Usage(option + ": \"" + typed + "\" may be "
                    + String.join(", ", begin.stream().map(Coded::code).toList()) + ". Write one of them");
        }
        throw new Usage(option + ": \"" + typed + "\" is not a known code"
                + Nearest.to(typed, all).map(n -> ". Did you mean " + n + "?").orElse(".")
                + " Codes: " + String.join(", ", all) + ". Your own go under [codes] in shop.toml");
    }
}
