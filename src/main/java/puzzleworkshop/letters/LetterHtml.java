package puzzleworkshop.letters;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A letter's plain text as a page of HTML that mail programs show: paragraphs, addresses that can be pressed, nothing
 * fetched from anywhere. Everything of the text is escaped; the only markup is ours.
 */
final class LetterHtml {

    /** Ends before punctuation that belongs to the sentence. */
    private static final Pattern ADDRESS = Pattern.compile("https?://[^\\s<>\"]*[^\\s<>\".,;:!?)]");

    private LetterHtml() {}

    /**
     * @param title for the head of the page
     * @param logo what the logo's picture is addressed by; empty for none
     * @param face the same for the small picture of the puzzle
     * @param faceWords what is on that picture, for those who do not see it
     */
    static String of(String title, String body, String logo, String logoWords, String face, String faceWords) {
        StringBuilder page = new StringBuilder(1024)
                .append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>")
                .append(escaped(title))
                .append("</title></head>\n<body style=\"font-family:sans-serif;font-size:16px;line-height:1.5;"
                        + "max-width:36em;margin:0 auto;padding:16px\">\n");
        picture(page, logo, logoWords, "max-height:72px;max-width:240px");
        for (String paragraph : body.split("\n\\s*\n")) {
            page.append("<p>")
                    .append(linked(paragraph.strip()).replace("\n", "<br>\n"))
                    .append("</p>\n");
        }
        picture(page, face, faceWords, "max-width:240px;height:auto;border-radius:4px");
        return page.append("</body></html>\n").toString();
    }

    private static void picture(StringBuilder page, String source, String words, String style) {
        if (!source.isEmpty()) {
            page.append("<p><img src=\"")
                    .append(escaped(source))
                    .append("\" alt=\"")
                    .append(escaped(words))
                    .append("\" style=\"")
                    .append(style)
                    .append("\"></p>\n");
        }
    }

    private static String linked(String text) {
        Matcher address = ADDRESS.matcher(text);
        StringBuilder out = new StringBuilder();
        int from = 0;
        while (address.find()) {
            String found = escaped(address.group());
            out.append(escaped(text.substring(from, address.start())))
                    .append("<a href=\"")
                    .append(found)
                    .append("\">")
                    .append(found)
                    .append("</a>");
            from = address.end();
        }
        return out.append(escaped(text.substring(from))).toString();
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }
}
