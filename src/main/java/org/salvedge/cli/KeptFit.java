package org.salvedge.cli;

import java.io.IOException;
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
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.WholeFile;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.History;
import org.salvedge.shop.Settings;
import org.salvedge.worth.ModelFile;
import org.salvedge.worth.ShopModel;

/**
 * The fit of a large shop, kept beside its ledger: reading it back costs a fraction of reading the record and fitting anew. It counts
 * as long as the record as it stood on the day, the settings that go into it and the program are the same.
 */
final class KeptFit {
    static final String NAME = "shop.fit";
    /** Below this a fit takes less time than keeping it is worth. */
    private static final int WORTH_KEEPING = 20_000;

    private KeptFit() {}

    static ShopModel model(LocalDate day, Ledger ledger, Session session, Settings settings) {
        Path file = session.shop().folder().resolve(NAME);
        String key = Files.isRegularFile(file) ? key(day, ledger, session, settings) : "";
        Optional<ShopModel> kept = key.isEmpty() ? Optional.empty() : ModelFile.read(file, key);
        if (kept.isPresent()) {
            return kept.get();
        }
        History history = ledger.history(AsOf.endOf(day), Ledger.Detail.FULL);
        ShopModel model = ShopModel.fit(history, ledger.parts(AsOf.endOf(day)), day, settings);
        if (history.sets() >= WORTH_KEEPING) {
            try {
                String fresh = key(day, ledger, session, settings);
                WholeFile.write(file, out -> ModelFile.write(model, fresh, out));
            } catch (IOException e) {
                // A shop that cannot be written is read all the same; the fit is made anew each time.
            }
        }
        return model;
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
