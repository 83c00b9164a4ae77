package puzzleworkshop.access;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.servlet.http.Cookie;
import java.time.Clock;
import java.time.Duration;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;

/** A browser that was signed in before the program was started again. */
@DatabaseTest
class StaySignedInIT {

    private static final String PASSWORD = "birch paper ink";

    @Autowired
    Accounts accounts;

    @Autowired
    StaySignedIn stay;

    @Autowired
    StaySignedInStore store;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    DataSource dataSource;

    private Account robin;
    private Cookie cookie;

    @BeforeEach
    void a_browser_is_signed_in() {
        CleanDatabase.now(dataSource);
        accounts.makeFirstOwner("Robin", PASSWORD);
        robin = accounts.add("Kim", PASSWORD, Role.MAKER);
        Person person = Person.of(robin);
        MockHttpServletResponse response = new MockHttpServletResponse();
        stay.loginSuccess(
                new MockHttpServletRequest(),
                response,
                UsernamePasswordAuthenticationToken.authenticated(person, null, person.getAuthorities()));
        String set = response.getHeader("Set-Cookie");
        assertThat(set).contains("HttpOnly").contains("SameSite=Lax");
        cookie = new Cookie("pw-stay", set.substring(set.indexOf('=') + 1, set.indexOf(';')));
    }

    @Test
    void comes_back_as_the_same_person_in_a_new_session_and_more_than_once() {
        for (int i = 0; i < 3; i++) {
            assertThat(back(stay)).isNotNull();
            assertThat(((Person) back(stay).getPrincipal()).name()).isEqualTo("Kim");
            assertThat(back(stay).getAuthorities()).extracting("authority").containsExactly("ROLE_MAKER");
        }
    }

    @Test
    void only_a_hash_of_the_token_lies_in_the_database() {
        assertThat(jdbc.sql("select token_sha256 from stay_signed_in")
                        .query(String.class)
                        .single())
                .hasSize(64)
                .isNotEqualTo(cookie.getValue());
    }

    @Test
    void is_not_let_in_with_another_token_or_none() {
        cookie = new Cookie("pw-stay", "A".repeat(43));
        assertThat(back(stay)).isNull();
        assertThat(stay.autoLogin(new MockHttpServletRequest(), new MockHttpServletResponse()))
                .isNull();
    }

    @Test
    void a_new_password_another_role_or_no_right_to_enter_ends_it() {
        accounts.changePassword(robin.id(), "other words in a row");
        assertThat(back(stay)).isNull();
        a_browser_is_signed_in();
        accounts.changeRole(robin.id(), Role.OWNER);
        assertThat(back(stay)).isNull();
        a_browser_is_signed_in();
        accounts.deactivate(robin.id());
        assertThat(back(stay)).isNull();
    }

    @Test
    void signing_out_ends_it() {
        MockHttpServletRequest request = new MockHttpServletRequest();
        request.setCookies(cookie);
        stay.logout(request, new MockHttpServletResponse(), null);
        assertThat(back(stay)).isNull();
    }

    @Test
    void lasts_no_longer_than_a_session_would() {
        StaySignedIn later = new StaySignedIn(
                store, Clock.offset(Clock.systemDefaultZone(), Duration.ofHours(9)), Duration.ofHours(8));
        assertThat(back(later)).isNull();
        StaySignedIn soon = new StaySignedIn(
                store, Clock.offset(Clock.systemDefaultZone(), Duration.ofHours(7)), Duration.ofHours(8));
        assertThat(back(soon)).isNotNull();
        assertThat(back(later)).as("seen two hours before").isNotNull();
    }

    private Authentication back(StaySignedIn services) {
        MockHttpServletRequest request = new MockHttpServletRequest();
        request.setCookies(cookie);
        return services.autoLogin(request, new MockHttpServletResponse());
    }
}
