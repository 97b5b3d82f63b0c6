package org.salvedge.ledger;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/** Writes the descriptor of a package: a Frictionless Data Package whose resources have a Table Schema. */
final class Descriptor {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private Descriptor() {}

    static String json(List<Table<?>> tables, PackageSettings settings) {
        ObjectNode root = JSON.objectNode();
        root.put("profile", "tabular-data-package");
        root.put("name", "history");
        root.put("title", "History of a television refurbisher: lots, sets, attempts, exits, comebacks");
        root.set(PackageFiles.SETTINGS, settings(settings));
        ArrayNode resources = root.putArray("resources");
        for (Table<?> table : tables) {
            resources.add(resource(table));
        }
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        DefaultIndenter indenter = new DefaultIndenter(" ", "\n");
        printer.indentObjectsWith(indenter);
        try {
            return new ObjectMapper().writer(printer).writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    private static ObjectNode settings(PackageSettings settings) {
        ObjectNode node = JSON.objectNode();
        if (settings.currency() != null) {
            node.put("currency", settings.currency().getCurrencyCode());
        }
        if (settings.zone() != null) {
            node.put("zone", settings.zone().getId());
        }
        if (settings.labourRate() != null) {
            node.put("labour_rate", settings.labourRate());
        }
        if (settings.basis() != null) {
            node.put("basis", settings.basis().code());
        }
        return node;
    }

    private static ObjectNode resource(Table<?> table) {
        ObjectNode node = JSON.objectNode();
        node.put("name", table.resource());
        node.put("path", table.file());
        node.put("profile", "tabular-data-resource");
        node.put("format", "csv");
        node.put("mediatype", "text/csv");
        node.put("encoding", "utf-8");
        ObjectNode schema = node.putObject("schema");
        ArrayNode fields = schema.putArray("fields");
        ArrayNode key = JSON.arrayNode();
        for (Column<?, ?> column : table.columns()) {
            fields.add(field(column));
            if (column.isKey()) {
                key.add(column.name());
            }
        }
        schema.putArray("missingValues").add("");
        schema.set("primaryKey", key);
        List<Link> links = Link.of(table);
        if (!links.isEmpty()) {
            ArrayNode foreign = schema.putArray("foreignKeys");
            for (Link link : links) {
                ObjectNode one = foreign.addObject();
                one.putArray("fields").add(link.column());
                ObjectNode reference = one.putObject("reference");
                reference.put("resource", link.to().resource());
                reference.putArray("fields").add(link.there());
            }
        }
        return node;
    }

    private static ObjectNode field(Column<?, ?> column) {
        ObjectNode node = JSON.objectNode();
        node.put("name", column.name());
        node.put("type", column.type().schemaType());
        if (column.type().equals(Types.TIME)) {
            node.put("format", "%Y-%m-%dT%H:%M:%S");
        }
        node.put("description", column.title());
        ObjectNode constraints = JSON.objectNode();
        if (column.need() != Column.Need.OPTIONAL) {
            constraints.put("required", true);
        }
        List<String> words = column.type().words();
        if (!words.isEmpty()) {
            ArrayNode list = constraints.putArray("enum");
            words.forEach(list::add);
        }
        if (!constraints.isEmpty()) {
            node.set("constraints", constraints);
        }
        return node;
    }
}
