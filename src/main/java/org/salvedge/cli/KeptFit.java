package org.salvedge.cli;

import java.io.IOException;
import java.io.Serializable;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.security.CodeSource;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.WholeFile;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.History;
import org.salvedge.shop.Part;
import org.salvedge.shop.Settings;
import org.salvedge.worth.ModelFile;
import org.salvedge.worth.ShopModel;
import org.salvedge.worth.turn.StopModel;

/**
 * The fit of a large shop, kept beside its ledger: reading it back costs a fraction of reading the record and fitting anew. It counts
 * as long as the record as it stood on the day, the settings that go into it and the program are the same.
 */
final class KeptFit {
    static final String NAME = "shop.fit";
    /** Below this a fit takes less time than keeping it is worth. */
    private static final int WORTH_KEEPING = 20_000;

    /** In the file. */
    record Fit(ShopModel model, StopModel stops) implements Serializable {}

    private KeptFit() {}

    /**
     * A fit, kept or fresh.
     *
     * @param stops fitted when asked for, where they were not kept
     */
    record Answers(ShopModel model, Supplier<StopModel> stops) {
        Answers(Fit fit) {
            this(fit.model, fit::stops);
        }
    }

    static Answers of(LocalDate day, Ledger ledger, Session session, Settings settings) {
        return of(day, ledger, session, settings, WORTH_KEEPING);
    }

    /** @param least number of sets from which on a fit is kept */
    static Answers of(LocalDate day, Ledger ledger, Session session, Settings settings, int least) {
        Path file = session.shop().folder().resolve(NAME);
        String key = Files.isRegularFile(file) ? key(day, ledger, session, settings) : "";
        Optional<Fit> kept = key.isEmpty() ? Optional.empty() : ModelFile.read(file, key, Fit.class);
        if (kept.isPresent()) {
            return new Answers(kept.get());
        }
        History history = ledger.history(AsOf.endOf(day), Ledger.Detail.FULL);
        List<Part> parts = ledger.parts(AsOf.endOf(day));
        if (history.sets() < least) {
            return new Answers(
                    ShopModel.fit(history, parts, day, settings),
                    () -> StopModel.fit(history, day, settings.labourRate()));
        }
        ForkJoinTask<StopModel> stops =
                ForkJoinPool.commonPool().submit(() -> StopModel.fit(history, day, settings.labourRate()));
        Fit fit = new Fit(ShopModel.fit(history, parts, day, settings), stops.join());
        try {
            String fresh = key(day, ledger, session, settings);
            WholeFile.write(file, out -> ModelFile.write(fit, fresh, out));
        } catch (IOException e) {
            // A shop that cannot be written is read all the same; the fit is made anew each time.
        }
        return new Answers(fit);
    }

    /** All that a fit depends on. */
    static String key(LocalDate day, Ledger ledger, Session session, Settings settings) {
        String all = String.join(
                "\n",
                ledger.state(AsOf.endOf(day)),
                file(session.shop().ledgerFile()),
                day.toString(),
                settings.labourRate().stripTrailingZeros().toPlainString(),
                settings.currency().toString(),
                settings.zone().toString(),
                new TreeMap<>(settings.families()).toString(),
                Version.text(),
                file(program()));
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(digest.digest(all.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private static @Nullable Path program() {
        CodeSource source = ShopModel.class.getProtectionDomain().getCodeSource();
        try {
            return source == null ? null : Path.of(source.getLocation().toURI());
        } catch (URISyntaxException | IllegalArgumentException e) {
            return null;
        }
    }

    /** What tells a file from another that was put in its place. */
    private static String file(@Nullable Path file) {
        if (file == null) {
            return "";
        }
        try {
            BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
            String changed = file.toString().endsWith(".jar")
                    ? attributes.lastModifiedTime().toString()
                    : "";
            return attributes.fileKey() + " " + attributes.creationTime() + " " + changed;
        } catch (IOException e) {
            return "";
        }
    }
}
