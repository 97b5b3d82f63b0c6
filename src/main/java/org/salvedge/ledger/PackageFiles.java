package org.salvedge.ledger;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Basis;
import org.salvedge.shop.Coded;
import org.salvedge.shop.Refused;

/** Where a package's files are, by its descriptor; nothing outside its folder is touched. */
final class PackageFiles {
    static final String DESCRIPTOR = "datapackage.json";
    /** The descriptor's property for the settings that figures rest on. */
    static final String SETTINGS = "shop";

    private static final long LARGEST_DESCRIPTOR = 10_000_000;

    /** Tables that every package has. */
    static final List<Table<?>> NEEDED =
            List.of(Tables.LOTS, Tables.UNITS, Tables.ATTEMPTS, Tables.EXITS, Tables.COMEBACKS);

    private final Map<Table<?>, Path> paths = new HashMap<>();
    private final PackageSettings settings;

    /** @throws Refused if it is not a package of ours, or leads out of its folder */
    PackageFiles(Path folder) {
        Path descriptor = folder.resolve(DESCRIPTOR);
        if (!Files.isRegularFile(descriptor)) {
            throw new Refused(folder + " holds no history package: there is no " + DESCRIPTOR);
        }
        JsonNode root = parse(descriptor);
        JsonNode resources = root.path("resources");
        if (!resources.isArray()) {
            throw refused("it lists no resources");
        }
        for (JsonNode resource : resources) {
            add(folder, resource);
        }
        List<String> missing = NEEDED.stream()
                .filter(t -> !paths.containsKey(t))
                .map(Table::resource)
                .collect(Collectors.toList());
        if (!missing.isEmpty()) {
            throw refused("it lacks the resources " + String.join(", ", missing));
        }
        settings = settings(root.path(SETTINGS));
    }

    private static Refused refused(String what) {
        return new Refused(DESCRIPTOR + ": " + what);
    }

    private static JsonNode parse(Path descriptor) {
        try {
            if (Files.size(descriptor) > LARGEST_DESCRIPTOR) {
                throw refused("it is too large");
            }
            ObjectMapper mapper = JsonMapper.builder()
                    .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
                    .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                    .build();
            return mapper.readTree(Files.readAllBytes(descriptor));
        } catch (JsonProcessingException e) {
            throw refused("it is not JSON: " + e.getOriginalMessage() + where(e));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String where(JacksonException e) {
        return e.getLocation() == null ? "" : " (line " + e.getLocation().getLineNr() + ")";
    }

    private void add(Path folder, JsonNode resource) {
        String name = resource.path("name").asText();
        Table<?> table = Tables.ALL.stream()
                .filter(t -> t.resource().equals(name))
                .findFirst()
                .orElseThrow(() -> refused("the resource \"" + name + "\" is not one of "
                        + Tables.ALL.stream().map(Table::resource).collect(Collectors.joining(", "))
                        + "; remove it from the package"));
        JsonNode path = resource.path("path");
        if (!path.isTextual() || path.asText().isEmpty()) {
            throw refused("the resource \"" + name + "\" needs one path, as in \"" + table.file() + "\"");
        }
        String delimiter = resource.path("dialect").path("delimiter").asText(",");
        String encoding = resource.path("encoding").asText("utf-8");
        if (!delimiter.equals(",") || !encoding.equalsIgnoreCase("utf-8")) {
            throw refused("the resource \"" + name + "\" must be CSV with commas in UTF-8; save it so");
        }
        if (paths.put(table, within(folder, path.asText())) != null) {
            throw refused("the resource \"" + name + "\" stands there twice");
        }
    }

    /** The file of that path, if it lies inside the folder, is a file, and no link leads to it. */
    private static Path within(Path folder, String path) {
        boolean odd = path.startsWith("/") || path.contains("\\") || path.contains(":") || path.indexOf('\0') >= 0;
        Path file = folder;
        for (String step : path.split("/", -1)) {
            odd |= step.equals("..") || step.isEmpty();
            if (odd) {
                break;
            }
            file = file.resolve(step);
            odd = Files.isSymbolicLink(file);
        }
        if (odd) {
            throw refused("the path \"" + path
                    + "\" is not a plain path inside the folder; name a file beside datapackage.json, no link");
        }
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            throw refused("the file \"" + path + "\" is not there");
        }
        return file;
    }

    private static PackageSettings settings(JsonNode node) {
        if (!node.isObject()) {
            return PackageSettings.NONE;
        }
        String currency = node.path("currency").asText("");
        String zone = node.path("zone").asText("");
        String basis = node.path("basis").asText("");
        BigDecimal rate = null;
        JsonNode labour = node.path("labour_rate");
        if (labour.isNumber()) {
            rate = labour.decimalValue();
        } else if (!labour.isMissingNode() && !labour.isNull()) {
            throw refused("\"labour_rate\" is not a number");
        }
        try {
            return new PackageSettings(
                    currency.isEmpty() ? null : Parse.currency(currency),
                    zone.isEmpty() ? null : ZoneId.of(zone),
                    rate,
                    basis.isEmpty() ? null : basis(basis));
        } catch (BadCell e) {
            throw refused("\"" + currency + "\" " + e.problem());
        } catch (DateTimeException e) {
            throw refused("\"" + zone + "\" is not a time zone");
        }
    }

    private static Basis basis(String code) {
        Optional<Basis> basis = Coded.find(Basis.class, code);
        return basis.orElseThrow(() -> refused("the basis \"" + code + "\" is not one of " + Coded.codes(Basis.class)));
    }

    PackageSettings settings() {
        return settings;
    }

    /** Null where the package has no such file. */
    @Nullable
    Path path(Table<?> table) {
        return paths.get(table);
    }

    /** Name of the file that rows of a table come from. */
    String name(Table<?> table) {
        Path path = paths.get(table);
        return path == null ? table.file() : String.valueOf(path.getFileName());
    }

    long bytes() {
        long bytes = 0;
        try {
            for (Path path : paths.values()) {
                bytes += Files.size(path);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes;
    }
}
