package org.salvedge.manifest.words;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.salvedge.shop.Claim;

/** From the ideas of a clause to the symptoms and states it claims. */
final class ClaimRules {
    private static final int SHORT = 3;

    private ClaimRules() {}

    /**
     * What one clause claims.
     *
     * @param all the clauses of the remark, for what depends on the others
     */
    static Set<Claim> claims(Clause c, List<Clause> all) {
        Set<Claim> claims = new LinkedHashSet<>();
        if (isCracked(c)) {
            claims.add(Claim.CRACKED);
        }
        boolean lines = addLines(c, claims);
        if (!lines && isHalf(c)) {
            claims.add(Claim.HALF_SCREEN);
        }
        if (isDead(c, all)) {
            claims.add(Claim.DEAD);
        }
        if (!claims.contains(Claim.HALF_SCREEN) && isWithoutPicture(c, all)) {
            claims.add(Claim.NO_PICTURE);
        }
        if (isBootLoop(c)) {
            claims.add(Claim.BOOT_LOOP);
        }
        if (isWithoutSound(c)) {
            claims.add(Claim.NO_SOUND);
        }
        if (!lines && isDim(c, claims)) {
            claims.add(Claim.DIM_PATCHY);
        }
        if (isOther(c, claims)) {
            claims.add(Claim.OTHER);
        }
        addStates(c, claims);
        return claims;
    }

    /** What of a set beside its glass may be broken. */
    private static boolean isOnlyBeside(Clause c) {
        boolean beside = c.names(Idea.OTHER) || c.names(Idea.EXTRA) || c.names(Idea.SPEAKER) || c.names(Idea.BOARD);
        return beside && !c.names(Idea.GLASS);
    }

    private static boolean isCracked(Clause c) {
        if (isOnlyBeside(c)) {
            return false;
        }
        boolean light = c.names(Idea.LIGHT) && !c.names(Idea.GLASS);
        return c.has(Idea.CRACK)
                || c.has(Idea.BROKEN) && !light && (!c.names(Idea.SOUND) || c.names(Idea.GLASS))
                || c.has(Idea.HARM) && c.names(Idea.GLASS) && !c.names(Idea.LIGHT);
    }

    private static boolean addLines(Clause c, Set<Claim> claims) {
        boolean level = c.has(Idea.LEVEL);
        boolean upright = c.has(Idea.UPRIGHT);
        boolean named = c.has(Idea.LINES);
        if (c.names(Idea.LINES) && !named) {
            return false;
        }
        if (level) {
            claims.add(Claim.HORIZONTAL_LINES);
        }
        if (upright) {
            claims.add(Claim.VERTICAL_LINES);
        }
        if (named && !level && !upright) {
            claims.add(Claim.OTHER);
        }
        return named || level || upright;
    }

    private static boolean isHalf(Clause c) {
        boolean shows = c.names(Idea.GLASS)
                || c.names(Idea.PICTURE)
                || c.hasAny(Idea.DARK, Idea.BLACK, Idea.BLACKSCREEN)
                || c.names(Idea.SIDE)
                || c.names(Idea.WORK)
                || c.names(Idea.GONE)
                || c.names(Idea.FAULT);
        if (c.names(Idea.HALF) && (shows || c.items().size() <= SHORT)) {
            return true;
        }
        boolean black = c.hasAny(Idea.BLACK, Idea.BLACKSCREEN) || c.lacks(Idea.PICTURE) || c.names(Idea.GONE);
        return c.has(Idea.SIDE) && black && !c.names(Idea.AREA) && !c.names(Idea.SOUND) && !c.names(Idea.EXTRA);
    }

    private static boolean isDead(Clause c, List<Clause> all) {
        boolean thing = c.names(Idea.SOUND)
                || c.names(Idea.SPEAKER)
                || c.names(Idea.PICTURE)
                || c.names(Idea.OTHER)
                || c.names(Idea.EXTRA)
                || c.names(Idea.LIGHT)
                || c.names(Idea.HALF);
        boolean loud = c.names(Idea.GLASS) && all.stream().anyMatch(other -> other.has(Idea.SOUND));
        return c.lacks(Idea.POWER)
                || c.lacks(Idea.TURNON) && all.stream().noneMatch(other -> other.names(Idea.LOGO))
                || c.has(Idea.DEAD) && !thing && !loud && !c.names(Idea.PARTLY)
                || (c.lacks(Idea.WORK) || c.lacks(Idea.WORKING)) && !thing
                || c.has(Idea.POWER) && c.hasAny(Idea.FAULT, Idea.BOARD, Idea.DEAD) && !c.names(Idea.OTHER);
    }

    private static boolean isWithoutPicture(Clause c, List<Clause> all) {
        if (c.names(Idea.HALF) || c.names(Idea.AREA) || c.names(Idea.LINES) || c.names(Idea.PARTLY)) {
            return false;
        }
        boolean side = c.names(Idea.SIDE);
        boolean loud = all.stream().anyMatch(other -> other.has(Idea.SOUND));
        boolean darkScreen = c.has(Idea.DARK) && (c.names(Idea.GLASS) || c.names(Idea.PICTURE)) && loud;
        return c.lacks(Idea.PICTURE)
                || !side && c.has(Idea.BLACKSCREEN)
                || !side
                        && c.has(Idea.BLACK)
                        && (c.names(Idea.GLASS) || c.names(Idea.PICTURE) || c.has(Idea.STUCK) || loud)
                || !side && darkScreen
                || c.lacks(Idea.GLASS)
                || c.lacks(Idea.LIGHT)
                || c.has(Idea.DEAD) && (c.names(Idea.PICTURE) || c.names(Idea.LIGHT) || c.names(Idea.GLASS) && loud)
                || c.has(Idea.SOUND) && c.has(Idea.ONLY) && !c.names(Idea.PICTURE)
                || c.has(Idea.PICTURE) && c.names(Idea.GONE) && !c.names(Idea.SOUND);
    }

    private static boolean isBootLoop(Clause c) {
        return c.has(Idea.RESTART)
                || c.has(Idea.STUCK) && c.names(Idea.TURNON)
                || c.has(Idea.LOGO) && !c.hasAny(Idea.CRACK, Idea.HARM, Idea.FINE)
                || c.has(Idea.TURNON) && c.hasAny(Idea.ANEW, Idea.SELF) && !c.names(Idea.NOT) && !c.names(Idea.GONE);
    }

    private static boolean isWithoutSound(Clause c) {
        return c.lacks(Idea.SOUND)
                || c.lacks(Idea.SPEAKER)
                || c.has(Idea.SOUNDLESS)
                || c.has(Idea.PICTURE) && c.has(Idea.ONLY) && !c.names(Idea.SOUND) && !c.names(Idea.HALF)
                || (c.has(Idea.SPEAKER) || c.has(Idea.SOUND))
                        && c.hasAny(Idea.FAULT, Idea.BROKEN, Idea.HARM, Idea.DEAD, Idea.CRACK)
                        && !c.names(Idea.GLASS)
                        && !c.names(Idea.PICTURE);
    }

    private static boolean isDim(Clause c, Set<Claim> claims) {
        if (claims.contains(Claim.HALF_SCREEN) || claims.contains(Claim.NO_PICTURE)) {
            return false;
        }
        boolean light = c.has(Idea.LIGHT)
                && c.hasAny(Idea.FAULT, Idea.BROKEN, Idea.HARM, Idea.DARK, Idea.OTHER, Idea.GONE, Idea.AREA, Idea.SIDE);
        return c.has(Idea.DIM)
                || c.has(Idea.DARK)
                || c.hasAny(Idea.BLACK, Idea.BLACKSCREEN) && (c.names(Idea.AREA) || c.names(Idea.PARTLY))
                || c.names(Idea.PARTLY) && (c.names(Idea.LIGHT) || c.has(Idea.DEAD))
                || light;
    }

    private static boolean isOther(Clause c, Set<Claim> claims) {
        if (!claims.isEmpty()) {
            return false;
        }
        boolean fineThing = c.hasAny(Idea.FINE, Idea.WORKING, Idea.OK) && !c.hasAny(Idea.FAULT, Idea.BROKEN, Idea.HARM);
        return c.names(Idea.OTHER) && !fineThing && !(c.lacks(Idea.OTHER) && isHurtWord(c))
                || c.has(Idea.TURNON) && c.names(Idea.GONE)
                || c.hasAny(Idea.STUCK, Idea.FAULT, Idea.HARM, Idea.BROKEN, Idea.CRACK, Idea.BOARD);
    }

    /** "no scratches", "no burn-in": harm that is denied is no symptom; "no signal" is one. */
    private static boolean isHurtWord(Clause c) {
        return c.items().stream()
                .filter(item -> item.is(Idea.OTHER))
                .allMatch(item -> HURT_WORDS.stream().anyMatch(item.words()::startsWith));
    }

    private static final List<String> HURT_WORDS = List.of(
            "scratch",
            "kratz",
            "zerkratzt",
            "ray",
            "aran",
            "burn",
            "einbrenn",
            "eingebrannt",
            "marquage",
            "quemad",
            "ghost",
            "pixel",
            "dead pixel",
            "flicker",
            "flacker",
            "flimmer",
            "scintill",
            "parpade",
            "tint",
            "noise",
            "bruit",
            "ruido",
            "smell",
            "geruch",
            "odeur",
            "olor",
            "water",
            "wasser",
            "humid",
            "dust",
            "imagen quemada",
            "brulure",
            "tote pixel",
            "image retention",
            "retention",
            "image fantome",
            "imagen fantasma",
            "fantom",
            "fantas");

    private static void addStates(Clause c, Set<Claim> claims) {
        if (c.has(Idea.UNTESTED) || c.lacks(Idea.TEST)) {
            claims.add(Claim.UNTESTED);
        }
        if (c.has(Idea.RETURN)) {
            claims.add(Claim.CUSTOMER_RETURN);
        }
        boolean well = c.hasAny(Idea.WORKING, Idea.OK, Idea.FINE, Idea.WORK, Idea.TEST, Idea.TURNON, Idea.ANEW);
        if (claims.isEmpty() && (well || c.lacks(Idea.FAULT))) {
            claims.add(Claim.WORKING);
        }
    }
}
