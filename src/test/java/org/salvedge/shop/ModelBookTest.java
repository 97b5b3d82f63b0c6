package org.salvedge.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class ModelBookTest {
    private ModelBook book;

    @BeforeEach
    void open() {
        book = new ModelBook(Map.of("OR-4", "Orlan small", "OR-43", "Orlan 43"));
        learn("Kestrel", "KX-55A1", "Kestrel KX-55", 3);
        learn("Kestrel", "KX-65B", "Kestrel KX-65", 1);
        learn("Vesper", "VS49", "Vesper 49", 1);
    }

    private void learn(String maker, String model, String family, int sets) {
        for (int i = 0; i < sets; i++) {
            book.learn(maker, model, family, Quantity.of(55));
        }
    }

    @Test
    void theLongestBeginningInTheSettingsWins() {
        assertThat(book.family("OR-43U")).isEqualTo("Orlan 43");
        assertThat(book.family("OR-40")).isEqualTo("Orlan small");
        learn("Orlan", "OR-43U", "something else", 9);
        assertThat(book.family("OR-43U")).isEqualTo("Orlan 43");
    }

    @Test
    void aModelOnRecordKeepsItsFamilyHoweverItIsWritten() {
        for (String written : List.of("KX-55A1", "kx-55a1", "KX 55 A1", "KX55A1", "KX_55A1")) {
            assertThat(book.family(written)).isEqualTo("Kestrel KX-55");
        }
    }

    @Test
    void elseTheLongestSharedBeginningCounts() {
        assertThat(book.family("KX-55B9")).isEqualTo("Kestrel KX-55");
        assertThat(book.family("KX-65S")).isEqualTo("Kestrel KX-65");
    }

    @Test
    void aBeginningOfFewerThanFourCharactersOrWithoutADigitIsNone() {
        assertThat(book.family("VS4")).isEqualTo("VS4");
        assertThat(book.family("KX-95")).isEqualTo("KX-95");
        learn("Maroq", "MAROQ-1", "Maroq", 1);
        assertThat(book.family("MAROQ-2")).isEqualTo("MAROQ-2");
    }

    @Test
    void whereSeveralFamiliesShareTheBeginningTheOneOfMostSetsCounts() {
        learn("Kestrel", "KX-55A2", "a later one", 2);
        assertThat(book.family("KX-55A9")).isEqualTo("Kestrel KX-55");
        learn("Kestrel", "KX-55A2", "a later one", 2);
        assertThat(book.family("KX-55A9")).isEqualTo("a later one");
    }

    @Test
    void ofEqualsTheFirstByCodePointsCounts() {
        learn("Kestrel", "KX-55A2", "B", 3);
        learn("Kestrel", "KX-55A3", "A", 3);
        assertThat(book.family("KX-55A9")).isEqualTo("A");
    }

    @Test
    void anUnknownModelHasAnUnknownFamily() {
        learn("Kestrel", TvSet.UNKNOWN, "Kestrel", 5);
        assertThat(book.family(TvSet.UNKNOWN)).isEqualTo(TvSet.UNKNOWN);
        assertThat(book.family("--")).isEqualTo(TvSet.UNKNOWN);
    }

    @Test
    void makerAndSizeAreThoseOfTheSameModel() {
        learn(TvSet.UNKNOWN, "KX-55A1", "Kestrel KX-55", 9);
        assertThat(book.maker("kx55a1")).isEqualTo("Kestrel");
        assertThat(book.inches("kx55a1")).isEqualTo(Quantity.of(55));
        assertThat(book.maker("KX-55B")).isEqualTo(TvSet.UNKNOWN);
        assertThat(book.inches("KX-55B")).isNull();
    }

    @Test
    void aMakerIsWrittenAsTheRecordWritesIt() {
        assertThat(book.makerAsKnown("KESTREL")).isEqualTo("Kestrel");
        assertThat(book.makerAsKnown(" vesper ")).isEqualTo("Vesper");
        assertThat(book.makerAsKnown("Orlan")).isEqualTo("Orlan");
        learn("VESPER", "VS50", "Vesper 50", 2);
        assertThat(book.makerAsKnown("vesper")).isEqualTo("VESPER");
        learn("Vesper", TvSet.UNKNOWN, TvSet.UNKNOWN, 1);
        assertThat(book.makerAsKnown("vesper")).isEqualTo("VESPER");
    }

    @Test
    void anEntryThatBeginsNothingIsRefused() {
        assertThatThrownBy(() -> new ModelBook(Map.of(" - ", "x")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("[families]: \" - \" is not the beginning of a model number");
    }
}
