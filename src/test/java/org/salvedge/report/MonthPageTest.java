package org.salvedge.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.Fact;
import org.salvedge.shop.TvSet;
import org.salvedge.yield.Deed;
import org.salvedge.yield.MessyShop;
import org.salvedge.yield.MonthReview;
import org.salvedge.yield.Packages;
import org.salvedge.yield.Range;

@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class MonthPageTest {
    private static final String HOSTILE = "<script>alert('x')</script>&\"><img src=x onerror=y>";

    private MonthReview review;
    private Paper paper;
    private String page;
    private Path file;

    @BeforeAll
    void write(@TempDir Path folder) throws IOException {
        List<Fact> facts = new ArrayList<>();
        for (Fact fact : MessyShop.facts(200, 11)) {
            boolean odd = fact instanceof TvSet set && set.unit().value().endsWith("-003");
            facts.add(
                    odd
                            ? ((TvSet) fact)
                                    .toBuilder().model(HOSTILE).family(HOSTILE).build()
                            : fact);
        }
        review = MonthReview.of(Packages.history(facts, folder), new BigDecimal("24"), YearMonth.of(2025, 6));
        paper = new Paper("Reed & Sons <x>", LocalDate.of(2025, 7, 1), "Letter", MessyShop.EUR);
        file = folder.resolve("month.html");
        MonthPage.write(review, paper, file);
        page = Files.readString(file);
    }

    @Test
    void textFromSellersIsNoTagAndTheShopsNameIsNone() {
        assertThat(page).contains("&lt;script&gt;").contains("Reed &amp; Sons &lt;x&gt;");
        assertThat(page).doesNotContain("<script").doesNotContain("<img");
    }

    @Test
    void whatAFamilysSetsLostEachTimesThemIsWhatLeavingItIsWorth() {
        Deed leave = new Deed(Deed.Kind.LEAVE, "KX-55", "", "", new Range(448, 318, 578), 12);
        assertThat(new MonthWords(review).deed(leave)).endsWith("its sets lost 37.33 EUR each.");
    }

    @Test
    void adviceThatMayBringNothingSaysSo() {
        MonthWords words = new MonthWords(review);
        assertThat(words.deed(new Deed(Deed.Kind.MEND, "reflow", "", "", new Range(58, -6, 122), 12)))
                .endsWith(" Not sure.");
        assertThat(words.deed(new Deed(Deed.Kind.MEND, "reflow", "", "", new Range(58, 6, 110), 12)))
                .doesNotContain("Not sure");
    }

    @Test
    void itNeedsNothingFromElsewhereAndNoScript() {
        assertThat(page.toLowerCase(java.util.Locale.ROOT))
                .doesNotContain("http:")
                .doesNotContain("https:")
                .doesNotContain("javascript")
                .doesNotContain("<link")
                .doesNotContain("@import")
                .doesNotContainPattern("<[^>]* on[a-z]+=");
    }

    @Test
    void everyTagIsClosedAndEveryLinkLeadsSomewhere() {
        Matcher tags = Pattern.compile("<(/?)([a-z0-9]+)([^>]*?)(/?)>").matcher(page);
        List<String> open = new ArrayList<>();
        while (tags.find()) {
            String name = tags.group(2);
            if (name.equals("meta") || !tags.group(4).isEmpty()) {
                continue;
            }
            if (tags.group(1).isEmpty()) {
                open.add(name);
            } else {
                assertThat(open.remove(open.size() - 1))
                        .as("closed at " + tags.start())
                        .isEqualTo(name);
            }
        }
        assertThat(open).isEmpty();
        Set<String> ids = new HashSet<>();
        Matcher id = Pattern.compile(" id=\"([^\"]+)\"").matcher(page);
        while (id.find()) {
            assertThat(ids.add(id.group(1))).as("only once: " + id.group(1)).isTrue();
        }
        Matcher link = Pattern.compile("href=\"#([^\"]+)\"").matcher(page);
        int links = 0;
        while (link.find()) {
            assertThat(ids).contains(link.group(1));
            links++;
        }
        assertThat(links).isGreaterThan(40);
    }

    @Test
    void theSameFiguresGiveTheSameBytes(@TempDir Path folder) throws IOException {
        MonthPage.write(review, paper, folder.resolve("again.html"));
        assertThat(folder.resolve("again.html")).hasSameBinaryContentAs(file);
    }

    @Test
    void itSaysWhatTheWorkbookSays() {
        for (String sentence : new MonthWords(review).sentences()) {
            assertThat(page).contains(Html.text(Unbroken.text(sentence)));
        }
        boolean lots = review.bids().stream().anyMatch(b -> b.finished());
        assertThat(page.split("<svg viewBox", -1))
                .as("a chart of lots only where lots are finished")
                .hasSize(lots ? 5 : 4);
        assertThat(page).contains("size: Letter");
        for (MonthSheets.Sheet sheet : MonthSheets.of(review)) {
            assertThat(page).contains("<h2>" + Html.text(sheet.table().title()) + "</h2>");
        }
    }

    /** Web Content Accessibility Guidelines 2.2, success criterion 1.4.3: 4.5 for text; here also for lines and bars. */
    @Test
    void contrastIsEnoughInLightAndDark() throws IOException {
        String css = page.substring(page.indexOf("<style>"), page.indexOf("</style>"));
        Matcher roots = Pattern.compile(":root \\{([^}]*)\\}").matcher(css);
        int themes = 0;
        while (roots.find()) {
            Map<String, String> colours = new HashMap<>();
            Matcher colour = Pattern.compile("--([a-z]+): #([0-9a-f]{6})").matcher(roots.group(1));
            while (colour.find()) {
                colours.put(colour.group(1), colour.group(2));
            }
            for (String front : List.of("ink", "muted", "link", "main", "other", "third")) {
                for (String back : List.of("paper", "shade")) {
                    assertThat(contrast(colours.getOrDefault(front, ""), colours.getOrDefault(back, "")))
                            .as(front + " on " + back + ", theme " + themes)
                            .isGreaterThanOrEqualTo(4.5);
                }
            }
            themes++;
        }
        assertThat(themes).isEqualTo(3);
        assertThat(css.replaceAll(":root \\{[^}]*\\}", ""))
                .as("no colour beside these")
                .doesNotContainPattern("#[0-9a-f]{3}");
    }

    private static double contrast(String a, String b) {
        double first = luminance(a);
        double second = luminance(b);
        return (Math.max(first, second) + 0.05) / (Math.min(first, second) + 0.05);
    }

    private static double luminance(String rgb) {
        double[] weights = {0.2126, 0.7152, 0.0722};
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            double c = Integer.parseInt(rgb.substring(2 * i, 2 * i + 2), 16) / 255.0;
            sum += weights[i] * (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
        }
        return sum;
    }
}
