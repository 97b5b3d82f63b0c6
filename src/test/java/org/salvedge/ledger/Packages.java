package org.salvedge.ledger;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/** A small good package for tests to spoil: text by resource. */
final class Packages {
    private final Map<String, String> files = new LinkedHashMap<>();
    private Charset charset = StandardCharsets.UTF_8;
    private String settings = "";

    Packages() {
        files.put("lots", """
                lot,supplier,bought_on,currency,price,freight
                L1,Kavo Salvage,2026-03-01,EUR,100.00,0.01
                """);
        files.put("units", """
                unit,lot,line,maker,model,family,inches,claimed,claimed_text,arrived,landed_cost
                L1-001,L1,1,Lumka,LK55-1,LK55,55,horizontal_lines,"lines, on
                screen",true,
                L1-002,L1,2,Lumka,LK55-1,LK55,55,dead,,true,40.00
                L1-003,L1,3,Lumka,LK55-1,LK55,,dead,,true,
                L1-004,L1,4,Lumka,LK55-1,LK55,55,dead,,false,
                """);
        files.put("attempts", """
                attempt,unit,started_at,fault,fix,diagnosis_minutes,fix_minutes,passed
                1,L1-001,2026-03-02T09:00:00,row_drive,contact_mask,7,24.50,TRUE
                """);
        files.put("exits", """
                unit,on,exit,gross
                L1-001,2026-03-05,sold,120
                """);
        files.put("comebacks", """
                unit,on,restocked
                L1-001,2026-03-09,true
                """);
    }

    Packages with(String resource, String text) {
        files.put(resource, text);
        return this;
    }

    Packages without(String resource) {
        files.remove(resource);
        return this;
    }

    /** Replaces a piece of one file's text that is there once. */
    Packages change(String resource, String from, String to) {
        String text = String.valueOf(files.get(resource));
        if (text.indexOf(from) < 0 || text.indexOf(from) != text.lastIndexOf(from)) {
            throw new IllegalArgumentException(from + " stands not once in " + resource);
        }
        return with(resource, text.replace(from, to));
    }

    Packages in(Charset other) {
        charset = other;
        return this;
    }

    /** JSON of the property for settings. */
    Packages settings(String json) {
        settings = ",\"shop\":" + json;
        return this;
    }

    Path write(Path into) throws IOException {
        Files.createDirectories(into);
        StringBuilder resources = new StringBuilder();
        for (Map.Entry<String, String> file : files.entrySet()) {
            String name = file.getKey() + ".csv";
            Files.writeString(into.resolve(name), file.getValue(), charset);
            resources
                    .append(resources.isEmpty() ? "" : ",")
                    .append("{\"name\":\"" + file.getKey() + "\",\"path\":\"" + name + "\"}");
        }
        Files.writeString(into.resolve("datapackage.json"), "{\"resources\":[" + resources + "]" + settings + "}");
        return into;
    }
}
