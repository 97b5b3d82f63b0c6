package org.salvedge.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.salvedge.manifest.words.ClaimReader;
import org.salvedge.manifest.words.Goods;
import org.salvedge.manifest.words.RowWords;

class DescriptionReaderTest {
    private static final Goods GOODS = new Goods();
    private static final DescriptionReader READER =
            new DescriptionReader(GOODS, new ClaimReader(Map.of()), new SizeReader(GOODS, new RowWords()));

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', nullValues = "-", textBlock = """
            Kestrel KX-75F11 | Kestrel | KX-75F11 | - | ``
            Blue Heron BHN6500 | Blue Heron | BHN6500 | - | ``
            55" Brightholm LED TV BH-55F1 - tested working | Brightholm | BH-55F1 | 55 | tested working
            TV Brightholm BH-43F1, 43 inch, patchy light | Brightholm | BH-43F1 | 43 | patchy light
            Quillon 50QL655 50" LED TV no sound | Quillon | 50QL655 | 50 | no sound
            43" Ardelux LED TV AX43D2 - lines on scrn (horiz.) | Ardelux | AX43D2 | 43 | lines on scrn (horiz.)
            TV Pellmar PM.65.4K, 65 inch, wifi fault | Pellmar | PM.65.4K | 65 | wifi fault
            LED-Fernseher Grünfeld GF40-4000, 40 Zoll, Display gebrochen | Grünfeld | GF40-4000 | 40 | Display gebrochen
            Fernseher Blue Heron BHN5500 55 Zoll kein Bild | Blue Heron | BHN5500 | 55 | kein Bild
            Grünfeld GF55-4000 Fernseher 139 cm (55 Zoll) - geht nicht an | Grünfeld | GF55-4000 | 55 | geht nicht an
            Téléviseur LED Élancia ELN-65UH 65 pouces - écran cassé | Élancia | ELN-65UH | 65 | écran cassé
            TV Élancia ELN-50FH 50" pas de son | Élancia | ELN-50FH | 50 | pas de son
            Televisor Ñandar ND55K 55 pulgadas, pantalla rota | Ñandar | ND55K | 55 | pantalla rota
            Ñandar ND43P 43" LED 4K - sin sonido | Ñandar | ND43P | 43 | sin sonido
            Karo & Oel KO-55-Z5 55" 4K UHD Smart TV untested | Karo & Oel | KO-55-Z5 | 55 | untested
            Old Mill Vision OM32A3 32in no power | Old Mill Vision | OM32A3 | 32 | no power
            Kestrel KX-55U20 UHD 4K HDR10 TV, 55", customer return | Kestrel | KX-55U20 | 55 | customer return
            Kestrel - KX-55U20 - 55" - no power | Kestrel | KX-55U20 | 55 | no power
            Kestrel, KX-55U20, 55", no power | Kestrel | KX-55U20 | 55 | no power
            """)
    void makerModelSizeAndRestAreTakenApart(String text, String maker, String model, Integer inches, String rest) {
        Description d = READER.read(text);
        assertThat(d.maker()).as("maker").isEqualTo(maker);
        assertThat(d.model()).as("model").isEqualTo(model);
        assertThat(d.inches() == null ? null : d.inches().number().intValue())
                .as("inches")
                .isEqualTo(inches);
        assertThat(d.rest()).as("rest").isEqualTo(rest);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = ';', quoteCharacter = '`', nullValues = "-", textBlock = """
            Model: KX-75F11 Brand: Kestrel; -; KX-75F11
            KX-75F11 Kestrel 75" LED; Kestrel; KX-75F11
            Kestrel 5500 55"; Kestrel; 5500
            Defective Kestrel KX-75F11; Kestrel; KX-75F11
            2x Kestrel KX-75F11 75"; Kestrel; KX-75F11
            Smart TV Kestrel KX-75F11 2160p 60Hz; Kestrel; KX-75F11
            Kestrel 75 inch 4K KX75F11; Kestrel; KX75F11
            Kestrel LED TV 75" no power; Kestrel; -
            Cracked: Kestrel KX-75F11; Kestrel; KX-75F11
            used Kestrel TV model KX-75F11; Kestrel; KX-75F11
            """)
    void oddOrdersAreMet(String text, String maker, String model) {
        Description d = READER.read(text);
        assertThat(d.model()).as("model").isEqualTo(model);
        if (maker != null) {
            assertThat(d.maker()).as("maker").isEqualTo(maker);
        }
    }
}
