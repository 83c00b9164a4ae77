package puzzleworkshop.letters.mail;

import java.util.List;

/**
 * A letter that is to be sent: plain text and the same as HTML, small pictures that belong to the HTML, and papers attached.
 * Nothing in it is fetched from anywhere.
 *
 * @param text plain text, lines separated by line ends
 * @param html the same as a page; its pictures are addressed as {@code cid:} and the picture's name
 */
public record Message(String to, String subject, String text, String html, List<Part> pictures, List<Part> papers) {

    public Message {
        pictures = List.copyOf(pictures);
        papers = List.copyOf(papers);
    }

    /** A file within the message. */
    public record Part(String name, String mediaType, byte[] content) {}
}
