package puzzleworkshop.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.when;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.mock.env.MockEnvironment;

@DisplayNameGeneration(ReplaceUnderscores.class)
class StartCodeTest {

    private final Accounts accounts = mock(Accounts.class);

    @Test
    void at_the_computer_it_runs_on_no_code_is_asked_for() {
        StartCode code = new StartCode(new MockEnvironment(), accounts);
        for (String here : List.of("127.0.0.1", "127.4.5.6", "0:0:0:0:0:0:0:1", "::1", "::ffff:127.0.0.1")) {
            assertThat(code.isAsked(here, false)).as(here).isFalse();
        }
    }

    /** The first device in the network to reach the page became the owner. */
    @Test
    void from_any_other_address_the_code_is_asked_for_with_the_embedded_database_too() {
        when(accounts.none()).thenReturn(true);
        StartCode code = new StartCode(new MockEnvironment(), accounts);
        for (String there :
                List.of("192.168.1.20", "10.0.0.5", "2001:db8::1", "::ffff:10.0.0.5", "localhost", "", "x")) {
            assertThat(code.isAsked(there, false)).as(there).isTrue();
        }
        assertThat(code.isAsked("127.0.0.1", true))
                .as("sent on by a server in between")
                .isTrue();
        assertThat(code.opens("")).isFalse();
        assertThat(code.opens(said(code))).isTrue();
    }

    @Test
    void on_a_server_only_the_code_that_was_said_opens_however_it_is_typed() {
        when(accounts.none()).thenReturn(true);
        StartCode code = onServer();
        String said = said(code);
        assertThat(code.isAsked("127.0.0.1", false)).isTrue();
        assertThat(code.opens(said)).isTrue();
        assertThat(code.opens(" " + said.toLowerCase(Locale.ROOT).replace("-", " ")))
                .isTrue();
        assertThat(code.opens("")).isFalse();
        assertThat(code.opens(said.substring(1))).isFalse();
        assertThat(onServer().opens(said)).as("the code of another start").isFalse();
    }

    @Test
    void a_workshop_that_has_its_owner_says_no_code() {
        when(accounts.none()).thenReturn(false);
        assertThat(said(onServer())).isEmpty();
    }

    private StartCode onServer() {
        return new StartCode(
                new MockEnvironment().withProperty("spring.datasource.url", "jdbc:postgresql://db/workshop"), accounts);
    }

    private static String said(StartCode code) {
        PrintStream before = System.out;
        ByteArrayOutputStream words = new ByteArrayOutputStream();
        System.setOut(new PrintStream(words, true, StandardCharsets.UTF_8));
        try {
            code.say();
        } finally {
            System.setOut(before);
        }
        Matcher found = Pattern.compile("([A-Z0-9]{4}-[A-Z0-9]{4}-[A-Z0-9]{4})")
                .matcher(words.toString(StandardCharsets.UTF_8));
        return found.find() ? found.group(1) : "";
    }
}
