package puzzleworkshop.letters.mail;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import org.apache.james.mime4j.MimeException;
import org.apache.james.mime4j.dom.Entity;
import org.apache.james.mime4j.dom.Multipart;
import org.apache.james.mime4j.dom.SingleBody;
import org.apache.james.mime4j.dom.TextBody;
import org.apache.james.mime4j.message.DefaultMessageBuilder;
import org.apache.james.mime4j.stream.MimeConfig;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** The structure of letters by RFC 5322, 2045 to 2047 and 2387, read by Apache James mime4j in its strict way. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class MessageTest {

    private static final MailAccount FROM = new MailAccount(
            true,
            "mail.example.org",
            587,
            MailAccount.Security.STARTTLS,
            "",
            "Zoë’s Puzzles",
            "post@puzzles.example",
            false);

    private static final ZonedDateTime NOW = ZonedDateTime.of(2026, 12, 3, 14, 5, 9, 0, ZoneId.of("Europe/Berlin"));

    private static byte[] written() {
        Message message = new Message(
                "ida@norrby.example",
                "Your puzzle 2026-0147: ready on Thu 3 Dec, für Ida – a subject that is longer than one line of a"
                        + " header may be",
                "Dear Ida,\n\nfür dich: €24.\n" + "long ".repeat(300) + "\n.\nend",
                "<p>Dear Ida, <img src=\"cid:puzzle.jpg\" alt=\"\"></p>",
                List.of(
                        new Message.Part("logo.png", "image/png", new byte[] {1, 2, 3}),
                        new Message.Part("puzzle.jpg", "image/jpeg", new byte[] {4, 5})),
                List.of(new Message.Part("Rechnung 2026-0017 für Ida.pdf", "application/pdf", new byte[5000])));
        return MimeWriter.write(message, FROM, "<1@puzzles.example>", NOW);
    }

    private static org.apache.james.mime4j.dom.Message read(byte[] bytes) throws IOException {
        DefaultMessageBuilder builder = new DefaultMessageBuilder();
        builder.setMimeEntityConfig(MimeConfig.STRICT);
        return builder.parseMessage(new ByteArrayInputStream(bytes));
    }

    private static String text(Entity entity) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ((TextBody) entity.getBody())
                .getReader()
                .transferTo(new java.io.OutputStreamWriter(out, StandardCharsets.UTF_8) {
                    @Override
                    public void write(char[] chars, int from, int length) throws IOException {
                        super.write(chars, from, length);
                        flush();
                    }
                });
        return out.toString(StandardCharsets.UTF_8);
    }

    @Test
    void an_independent_parser_reads_who_when_and_what() throws IOException, MimeException {
        var message = read(written());
        assertThat(message.getFrom().getFirst().getName()).isEqualTo("Zoë’s Puzzles");
        assertThat(message.getFrom().getFirst().getAddress()).isEqualTo("post@puzzles.example");
        assertThat(message.getTo().flatten()).hasSize(1);
        assertThat(message.getSubject()).contains("für Ida – a subject").endsWith("may be");
        assertThat(message.getMessageId()).isEqualTo("<1@puzzles.example>");
        assertThat(message.getDate().toInstant()).isEqualTo(NOW.toInstant());
        assertThat(message.getHeader().getField("MIME-Version").getBody()).isEqualTo("1.0");
    }

    @Test
    void text_page_pictures_and_papers_lie_within_each_other_as_the_standards_say() throws IOException {
        Multipart mixed = (Multipart) read(written()).getBody();
        assertThat(mixed.getSubType()).isEqualTo("mixed");
        assertThat(mixed.getBodyParts()).hasSize(2);
        Multipart related = (Multipart) mixed.getBodyParts().get(0).getBody();
        assertThat(related.getSubType()).isEqualTo("related");
        assertThat(related.getBodyParts()).hasSize(3);
        Multipart alternative = (Multipart) related.getBodyParts().get(0).getBody();
        assertThat(alternative.getSubType()).isEqualTo("alternative");
        // RFC 2046, section 5.1.4: the plainest first, what is best shown last
        assertThat(alternative.getBodyParts())
                .extracting(Entity::getMimeType)
                .containsExactly("text/plain", "text/html");
        assertThat(text(alternative.getBodyParts().get(0)).replace("\r\n", "\n"))
                .contains("für dich: €24.")
                .endsWith("\n.\nend");
        Entity logo = related.getBodyParts().get(1);
        assertThat(logo.getMimeType()).isEqualTo("image/png");
        assertThat(logo.getHeader().getField("Content-ID").getBody()).isEqualTo("<logo.png>");
        assertThat(logo.getDispositionType()).isEqualTo("inline");
        assertThat(related.getBodyParts()
                        .get(2)
                        .getHeader()
                        .getField("Content-ID")
                        .getBody())
                .isEqualTo("<puzzle.jpg>");
        Entity paper = mixed.getBodyParts().get(1);
        assertThat(paper.getMimeType()).isEqualTo("application/pdf");
        assertThat(paper.getDispositionType()).isEqualTo("attachment");
        assertThat(((SingleBody) paper.getBody()).size()).isPositive();
    }

    /** RFC 5322, section 2.1.1: at most 998 characters in a line; section 2.3: lines end in CRLF; headers are ASCII. */
    @Test
    void lines_are_short_enough_and_end_as_they_must() {
        String all = new String(written(), StandardCharsets.ISO_8859_1);
        assertThat(all.replace("\r\n", "")).doesNotContain("\n").doesNotContain("\r");
        assertThat(all.split("\r\n")).allMatch(line -> line.length() <= 998);
        assertThat(all.substring(0, all.indexOf("\r\n\r\n"))).matches("\\p{ASCII}*");
    }

    @Test
    void nothing_typed_into_a_subject_or_name_becomes_a_header() throws IOException {
        Message message = new Message(
                "ida@norrby.example", "Hello\r\nBcc: eve@example.org", "x", "<p>x</p>", List.of(), List.of());
        MailAccount from = new MailAccount(
                true, "h", 25, MailAccount.Security.TLS, "", "Me\r\nBcc: eve@example.org", "a@b.example", false);
        var read = read(MimeWriter.write(message, from, "<2@b.example>", NOW));
        assertThat(read.getHeader().getField("Bcc")).isNull();
        assertThat(read.getSubject()).isEqualTo("Hello Bcc: eve@example.org");
    }

    @Test
    void a_contact_is_an_address_only_when_it_is_one() {
        assertThat(MailAddress.of(" ida@norrby.example ")).contains("ida@norrby.example");
        for (String none : new String[] {
            "",
            "0155 01 7734",
            "ida@",
            "@x.example",
            "ida@norrby",
            "a b@c.example",
            "a@b.example?bcc=x@y.example",
            "a@b.example, c@d.example",
            "a@b..example",
            ".a@b.example"
        }) {
            assertThat(MailAddress.of(none)).as(none).isEmpty();
        }
    }
}
