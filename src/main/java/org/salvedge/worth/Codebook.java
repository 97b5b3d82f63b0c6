package org.salvedge.worth;

import java.util.ArrayList;
import java.util.List;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Fault;
import org.salvedge.shop.History;
import org.salvedge.shop.Names;

/** Fault and claim codes numbered for the model: those built in first, then the shop's own in order of name. */
final class Codebook implements java.io.Serializable {
    final List<String> faults;
    final List<String> claims;
    final int broken;
    /** Sets sold without a turn at the bench. */
    final int unseen;

    private final int[] faultOf;
    private final int[] claimOf;

    Codebook(History history) {
        List<String> faultCodes = new ArrayList<>();
        Fault.BUILT_IN.keySet().forEach(f -> faultCodes.add(f.code()));
        extend(faultCodes, history.faults());
        broken = faultCodes.indexOf(Fault.PANEL_BROKEN.code());
        unseen = faultCodes.size();
        faultCodes.add("");
        faults = List.copyOf(faultCodes);
        List<String> claimCodes = new ArrayList<>();
        Claim.BUILT_IN.keySet().forEach(c -> claimCodes.add(c.code()));
        extend(claimCodes, history.claims());
        claims = List.copyOf(claimCodes);
        faultOf = numbers(history.faults(), faults);
        claimOf = numbers(history.claims(), claims);
    }

    private static void extend(List<String> codes, Names names) {
        names.all().stream().sorted().filter(c -> !codes.contains(c)).forEach(codes::add);
    }

    private static int[] numbers(Names names, List<String> codes) {
        int[] of = new int[names.size()];
        for (int i = 0; i < of.length; i++) {
            of[i] = codes.indexOf(names.text(i));
        }
        return of;
    }

    /** From the number in the history's dictionary. */
    int fault(int inHistory) {
        return faultOf[inHistory];
    }

    /** From the number in the history's dictionary. */
    int claim(int inHistory) {
        return claimOf[inHistory];
    }

    /** A claim that nobody has made before counts as any other. */
    int claim(Claim claim) {
        int i = claims.indexOf(claim.code());
        return i >= 0 ? i : claims.indexOf(Claim.OTHER.code());
    }
}
