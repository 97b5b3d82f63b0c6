package org.salvedge.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.manifest.SizeReader.Unit;
import org.salvedge.manifest.words.Goods;
import org.salvedge.manifest.words.RowWords;
import org.salvedge.shop.Quantity;

class SizeReaderTest {
    private final SizeReader sizes = new SizeReader(new Goods(), new RowWords());

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            55 | 55
            55" | 55
            55'' | 55
            55” | 55
            55″ | 55
            55 " | 55
            55in | 55
            55 in | 55
            55 in. | 55
            55-inch | 55
            55 inches | 55
            55 Inch | 55
            55 Zoll | 55
            55-Zoll | 55
            55zoll | 55
            55 pouces | 55
            55 po | 55
            55 pulgadas | 55
            55 pulg. | 55
            55 Pulg | 55
            43,0 | 43
            43.0" | 43
            54,6" | 54.6
            54.6 in | 54.6
            139 cm | 54.7
            139cm | 54.7
            138,8 cm | 54.6
            109 CM | 42.9
            1397 mm | 55
            1.397 mm | 55
            1,39 m | 54.7
            139 Zentimeter | 54.7
            139 centimetres | 54.7
            140 centímetros | 55.1
            55" (139 cm) | 55
            139 cm (55") | 55
            139 cm / 55 Zoll | 55
            55/139 | 55
            55 (140) | 55
            55 LED | 55
            55 UHD TV | 55
            55" class (54.6" diag) | 55
            55" 4K | 55
            4K 55" | 55
            54 1/2" | 54.5
            54½" | 54.5
            ca. 55" | 55
            ~55 | 55
            approx 55 inch | 55
            fifty-five | 55
            Fifty five inch | 55
            fünfundfünfzig Zoll | 55
            zweiunddreißig | 32
            cinquante-cinq pouces | 55
            quarante-trois | 43
            soixante-quinze | 75
            cincuenta y cinco | 55
            treinta y dos pulgadas | 32
            LED 55" | 55
            Diag. 55" | 55
            TV 55 Zoll | 55
            55. | 55
            (55) | 55
            55 Zoll (140 cm) | 55
            55"" | 55
            '55 | 55
            size 55 | 55
            """)
    void sizesAreReadInInches(String text, String inches) {
        assertThat(sizes.read(text, Unit.INCH).value()).isEqualTo(Quantity.parse(inches));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "5S\"",
                "0",
                "-55",
                "abc",
                "151",
                "999",
                "XL",
                "5O",
                "12-Oct",
                "55.Okt",
                "2026-02-03",
                "32-65\"",
                "120x70x15 cm",
                "l00",
                "20 l",
                "55a5",
                "large",
                "#REF!",
                "10.12.2025",
                "55.55.55",
                "Okt 55",
                "9 kg"
            })
    void whatIsNoSizeIsSaidSo(String text) {
        Reading<Quantity> reading = sizes.read(text, Unit.INCH);
        assertThat(reading.value()).as(text).isNull();
        assertThat(reading.isBad()).as(text).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"-", "n/a", "N/A", "k.A.", "", "unknown", "?", "--"})
    void noSizeIsNoProblemOfItsOwn(String text) {
        assertThat(sizes.read(text, Unit.INCH)).isEqualTo(Reading.nothing());
    }

    @ParameterizedTest
    @CsvSource({"139, 54.7", "109, 42.9", "81, 31.9", "190, 74.8", "216, 85", "138.8, 54.6", "55\", 55", "127 cm, 50"})
    void aHeadingThatSaysCentimetresCounts(String text, String inches) {
        assertThat(sizes.read(text, Unit.CENTIMETRE).value()).isEqualTo(Quantity.parse(inches));
    }

    @ParameterizedTest
    @CsvSource({
        "Diagonale (cm), CENTIMETRE",
        "Größe cm, CENTIMETRE",
        "Screen mm, MILLIMETRE",
        "Zoll, INCH",
        "Size, INCH",
        "Größe in cm, CENTIMETRE",
        "Diagonale in [mm], MILLIMETRE",
        "Size in, INCH",
        "Size in inch, INCH",
        "Size (in/cm), INCH",
        "Taille écran (cm), CENTIMETRE",
        "Pantalla cm, CENTIMETRE",
        "Diag.[cm], CENTIMETRE",
        "cm, CENTIMETRE"
    })
    void unitsOfHeadings(String heading, Unit unit) {
        assertThat(SizeReader.unitOf(heading)).isEqualTo(unit);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            55" Brightholm LED TV BH-55F1 | 55
            Quillon 55QL810 55in LED TV vertical stripes | 55
            TV Pellmar PM.65.4K, 65 inch, wifi fault | 65
            Fernseher Grünfeld GF40-4000 40 Zoll | 40
            LED-TV 101 cm (40 Zoll) Grünfeld | 40
            Téléviseur Élancia ELN-65UH 65 pouces | 65
            Televisor Ñandar ND55K 55 pulgadas | 55
            Televisor Ñandar ND55K 139 cm | 54.7
            Kestrel KX-75F11 - 75'' - no power | 75
            Kestrel KX-75F11 75-inch 4K | 75
            43in Ardelux | 43
            """)
    void sizesAreFoundInDescriptions(String text, String inches) {
        SizeReader.Found found = Objects.requireNonNull(sizes.findIn(text), text);
        assertThat(found.inches()).isEqualTo(Quantity.parse(inches));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Wall bracket 32-65\"",
                "Wall mount for 32\" to 70\"",
                "box 120 x 70 cm",
                "Kestrel KX-75F11",
                "2.1 Soundbar",
                "5 in stock",
                "20 l oven"
            })
    void whatIsNoScreenIsNoneInDescriptions(String text) {
        assertThat(sizes.findIn(text)).isNull();
    }

    @Test
    void aSizeIsFoundWhereItStands() {
        SizeReader.Found found = Objects.requireNonNull(sizes.findIn("Kestrel 55\" TV"));
        assertThat("Kestrel 55\" TV".substring(found.from(), found.to())).isEqualTo("55\"");
    }
}
