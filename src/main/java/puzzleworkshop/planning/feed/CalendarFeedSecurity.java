package puzzleworkshop.planning.feed;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpMethod;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.web.SecurityFilterChain;

/** Calendar programs cannot sign in: their link carries a secret instead, and nothing else lies behind this door. */
@Configuration(proxyBeanMethods = false)
class CalendarFeedSecurity {

    @Bean
    @Order(10)
    SecurityFilterChain calendarDoor(HttpSecurity http) throws Exception {
        return http.securityMatcher("/calendar/*")
                .authorizeHttpRequests(requests -> requests.requestMatchers(HttpMethod.GET, "/calendar/*")
                        .permitAll()
                        .anyRequest()
                        .denyAll())
                .sessionManagement(session -> session.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
                .build();
    }
}
