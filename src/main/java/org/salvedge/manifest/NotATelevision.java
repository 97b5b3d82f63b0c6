package org.salvedge.manifest;

import java.util.regex.Pattern;

/** Goods on a seller's list that are no television sets. */
final class NotATelevision {
    private static final Pattern GOODS = Pattern.compile(
            "\\b(sound ?bars?|sub ?woofers?|speakers?(?! fault| issue)|boombox|headphones?|ear(?:phones|buds)|radios?|hi fi|stereo|karaoke|toasters?|kettles?|microwaves?|fridges?|freezers?|dish ?washers?|washing machines?|dryers?|cookers?|ovens?|blenders?|mixers?|vacuums?|hoovers?|coffee|irons?|fans?|heaters?|fryers?|air fryers?|shavers?|hair|wall brackets?|wall mounts?|brackets?|tv mounts?|mounts?|cables?|hdmi cable|adapters?|remote controls?|remotes?|antennas?|aerials?|set top box|dvd|blu ?ray players?|players?|projectors?|monitors?|laptops?|tablets?|phones?|printers?|cameras?|consoles?|routers?|chargers?|batteries|tv stands?|stands? only|lamps?"
                    + "|soundbars?|lautsprecher|kopfhorer|toaster|wasserkocher|mikrowelle[n]?|kuhlschrank|spulmaschine|waschmaschine|staubsauger|kaffeemaschine|bugeleisen|ventilator|fritteuse|wandhalterung(?:en)?|halterung(?:en)?|kabel|fernbedienung(?:en)?|antenne[n]?|receiver|beamer|mixer|herd|fohn|rasierer"
                    + "|barres? de son|enceintes?|casques?|grille pain|bouilloires?|micro ?ondes?|refrigerateurs?|lave (?:linge|vaisselle)|aspirateurs?|cafetieres?|fers? a repasser|ventilateurs?|friteuses?|supports? mura[lu]x?|telecommandes?|cordons?|mixeurs?|seche cheveux|four"
                    + "|barras? de sonido|altavo[zc](?:es)?|auriculares|tostador(?:a|es|as)?|hervidor(?:es)?|microondas|frigorificos?|neveras?|lavadoras?|lavavajillas|aspirador(?:a|es|as)?|cafeteras?|planchas?|ventilador(?:es)?|freidoras?|soportes?(?: de pared)?|mandos?(?: a distancia)?|batidoras?|horno|secador)\\b");
    private static final Pattern SET = Pattern.compile(
            "\\b(led tv|smart tv|oled tv|qled tv|lcd tv|tvs?|televisions?|fernseher|televiseurs?|televisor(?:es)?)\\b");
    private static final Pattern MISSING =
            Pattern.compile("\\b(no|without|missing|incl|with|ohne|mit|fehlt|sans|avec|sin|con|falta|manque)\\b");

    private NotATelevision() {}

    /** Whether a text begins by naming such goods. */
    static boolean begins(String text) {
        return GOODS.matcher(Plain.of(text)).lookingAt();
    }

    /**
     * @param name maker, model and description; what the seller says of the state is not looked at
     * @param category the seller's own, if any
     */
    static boolean is(String name, String category) {
        String c = Plain.of(category);
        if (GOODS.matcher(c).find() && !SET.matcher(c).find()) {
            return true;
        }
        String n = Plain.of(name);
        if (!GOODS.matcher(n).find()) {
            return false;
        }
        if (SET.matcher(n).find()) {
            // "TV wall bracket" is none; "LED TV, no remote" is one.
            return !MISSING.matcher(n).find()
                    && Pattern.compile("\\b(?:bracket|mount|wandhalterung|halterung|support|soporte|stand|cable|kabel)")
                            .matcher(n)
                            .find();
        }
        return true;
    }
}
