package org.salvedge.report;

/** Text for a web page. */
final class Html {
    private Html() {}

    /** Text from anywhere as text: no tag, no entity, no attribute, no control character. */
    static String text(String text) {
        String visible = Visible.text(text);
        StringBuilder out = new StringBuilder(visible.length() + 16);
        for (int i = 0; i < visible.length(); i++) {
            char c = visible.charAt(i);
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> out.append(c);
            }
        }
        return out.toString();
    }
}
