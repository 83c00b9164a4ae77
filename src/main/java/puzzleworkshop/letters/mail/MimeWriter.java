package puzzleworkshop.letters.mail;

import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Properties;
import java.util.UUID;
import org.springframework.core.io.ByteArrayResource;
import org.springframework.mail.javamail.MimeMessageHelper;

/** Writes letters as mail programs exchange them: RFC 5322, with the parts of RFC 2045 to 2047 and 2387. */
final class MimeWriter {

    /** Day, month and zone as RFC 5322, section 3.3, has them, whatever the language of the house. */
    private static final DateTimeFormatter DATE =
            DateTimeFormatter.ofPattern("EEE, d MMM yyyy HH:mm:ss Z", Locale.ENGLISH);

    private MimeWriter() {}

    /** A name for a message that no other ever has. */
    static String newId(MailAccount from) {
        return "<" + UUID.randomUUID() + "@" + MailAddress.domain(from.fromAddress()) + ">";
    }

    /** All its bytes, as they are sent at every try. */
    static byte[] write(Message letter, MailAccount from, String messageId, ZonedDateTime date) {
        try {
            MimeMessage message = new Named(messageId);
            MimeMessageHelper helper = new MimeMessageHelper(
                    message, MimeMessageHelper.MULTIPART_MODE_MIXED_RELATED, StandardCharsets.UTF_8.name());
            helper.setEncodeFilenames(true);
            if (from.fromName().isBlank()) {
                helper.setFrom(from.fromAddress());
            } else {
                helper.setFrom(from.fromAddress(), oneLine(from.fromName()));
            }
            helper.setTo(letter.to());
            helper.setSubject(oneLine(letter.subject()));
            message.setHeader("Date", DATE.format(date));
            helper.setText(letter.text(), letter.html());
            for (Message.Part picture : letter.pictures()) {
                helper.addInline(picture.name(), new ByteArrayResource(picture.content()), picture.mediaType());
            }
            for (Message.Part paper : letter.papers()) {
                helper.addAttachment(paper.name(), new ByteArrayResource(paper.content()), paper.mediaType());
            }
            message.saveChanges();
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            message.writeTo(out);
            return out.toByteArray();
        } catch (MessagingException impossible) {
            throw new IllegalStateException(impossible);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    /** A line end in a header would begin another header. */
    private static String oneLine(String text) {
        return text.replaceAll("[\\p{Cntrl}\\s]+", " ").strip();
    }

    /** Keeps the identity that it was given. */
    private static final class Named extends MimeMessage {

        private final String id;

        Named(String id) {
            super(Session.getInstance(new Properties()));
            this.id = id;
        }

        @Override
        protected void updateMessageID() throws MessagingException {
            setHeader("Message-ID", id);
        }
    }
}
