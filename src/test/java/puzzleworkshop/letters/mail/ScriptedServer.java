package puzzleworkshop.letters.mail;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;

/**
 * A mail server that says what a test wants at each step (RFC 5321) and takes a message when it has read the line with a
 * single dot, whatever becomes of its answer.
 */
final class ScriptedServer implements AutoCloseable {

    /** Where a conversation stands, before the server answers. */
    enum Step {
        GREETING,
        EHLO,
        MAIL,
        RCPT,
        DATA,
        IN_THE_MESSAGE,
        AFTER_THE_DOT
    }

    private final ServerSocket door = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
    private final List<String> taken = new CopyOnWriteArrayList<>();
    private volatile Consumer<Step> before = step -> {};
    private volatile String answerToDot = "250 taken";
    private volatile String answerToRcpt = "250 ok";

    ScriptedServer() throws IOException {
        Thread.ofPlatform().daemon().start(this::receive);
    }

    int port() {
        return door.getLocalPort();
    }

    /** Runs before each answer; may kill the client or throw, which hangs up. */
    void before(Consumer<Step> step) {
        before = step;
    }

    void answerToDot(String line) {
        answerToDot = line;
    }

    void answerToRcpt(String line) {
        answerToRcpt = line;
    }

    /** The Message-IDs of all messages that were read to their last line and not refused. */
    List<String> taken() {
        return taken;
    }

    @Override
    public void close() throws IOException {
        door.close();
    }

    private void receive() {
        while (!door.isClosed()) {
            try (Socket caller = door.accept()) {
                talk(caller);
            } catch (IOException | IllegalStateException hungUp) {
                // the next caller, please
            }
        }
    }

    private void talk(Socket caller) throws IOException {
        BufferedReader in =
                new BufferedReader(new InputStreamReader(caller.getInputStream(), StandardCharsets.ISO_8859_1));
        OutputStream out = caller.getOutputStream();
        answer(out, Step.GREETING, "220 test");
        String line;
        while ((line = in.readLine()) != null) {
            String word = line.length() >= 4 ? line.substring(0, 4).toUpperCase() : line;
            switch (word) {
                case "EHLO", "HELO" -> answer(out, Step.EHLO, "250 test");
                case "MAIL" -> answer(out, Step.MAIL, "250 ok");
                case "RCPT" -> answer(out, Step.RCPT, answerToRcpt);
                case "DATA" -> {
                    answer(out, Step.DATA, "354 go on");
                    message(in, out);
                }
                case "QUIT" -> {
                    say(out, "221 bye");
                    return;
                }
                default -> say(out, "250 ok");
            }
        }
    }

    private void message(BufferedReader in, OutputStream out) throws IOException {
        String id = "";
        boolean first = true;
        String line;
        while ((line = in.readLine()) != null) {
            if (first) {
                before.accept(Step.IN_THE_MESSAGE);
                first = false;
            }
            if (line.startsWith("Message-ID: ") && id.isEmpty()) {
                id = line.substring(12).strip();
            }
            if (line.equals(".")) {
                if (answerToDot.startsWith("2")) {
                    taken.add(id);
                }
                answer(out, Step.AFTER_THE_DOT, answerToDot);
                return;
            }
        }
    }

    private void answer(OutputStream out, Step step, String line) throws IOException {
        before.accept(step);
        say(out, line);
    }

    private static void say(OutputStream out, String line) {
        try {
            out.write((line + "\r\n").getBytes(StandardCharsets.ISO_8859_1));
            out.flush();
        } catch (IOException gone) {
            throw new UncheckedIOException(gone);
        }
    }
}
