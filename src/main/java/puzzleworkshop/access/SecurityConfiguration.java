package puzzleworkshop.access;

import com.vaadin.flow.spring.security.VaadinSecurityConfigurer;
import java.time.Clock;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.HttpMethod;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authentication.ProviderManager;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configuration.EnableWebSecurity;
import org.springframework.security.core.session.SessionRegistry;
import org.springframework.security.core.session.SessionRegistryImpl;
import org.springframework.security.crypto.factory.PasswordEncoderFactories;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.authentication.AuthenticationFailureHandler;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.security.web.session.HttpSessionEventPublisher;
import puzzleworkshop.access.ui.SignInView;

/**
 * Everything asks for sign-in except what is listed here and views marked {@code @AnonymousAllowed}. CSRF tokens, a new
 * session at sign-in and the usual headers are Spring Security's own; the session cookie's flags stand in
 * application.properties.
 */
@Configuration(proxyBeanMethods = false)
@EnableWebSecurity
class SecurityConfiguration {

    private static final String SIGN_IN = "/" + SignInView.ROUTE;

    @Bean
    SecurityFilterChain doors(HttpSecurity http, SessionRegistry sessions) throws Exception {
        http.authorizeHttpRequests(requests -> requests
                .requestMatchers(HttpMethod.GET, "/healthz", "/*.css", "/*.js", "/*.svg", "/*.png", "/*.ico", "/*.woff2")
                .permitAll());
        // Without it what is no view (pictures, papers) would be refused even to people who are signed in.
        http.with(VaadinSecurityConfigurer.vaadin(), vaadin -> vaadin.loginView(SignInView.class)
                .anyRequest(any -> any.authenticated()));
        http.formLogin(form -> form.failureHandler(refused()));
        http.sessionManagement(session -> session.maximumSessions(-1)
                .sessionRegistry(sessions).expiredUrl(SIGN_IN + "?ended"));
        http.headers(headers -> headers
                .frameOptions(frame -> frame.sameOrigin())
                .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.SAME_ORIGIN))
                .contentSecurityPolicy(policy -> policy.policyDirectives(
                        "frame-ancestors 'self'; object-src 'self'; base-uri 'self'; form-action 'self'")));
        return http.build();
    }

    @Bean
    AuthenticationManager doorkeeper(Accounts accounts, Clock clock) {
        return new ProviderManager(new Door(accounts, new SignInThrottle(clock)));
    }

    @Bean
    PasswordEncoder passwordEncoder() {
        return PasswordEncoderFactories.createDelegatingPasswordEncoder();
    }

    @Bean
    SessionRegistry sessionRegistry() {
        return new SessionRegistryImpl();
    }

    /** Tells the registry when a session ends. */
    @Bean
    HttpSessionEventPublisher sessionEvents() {
        return new HttpSessionEventPublisher();
    }

    private static AuthenticationFailureHandler refused() {
        return (request, response, why) -> response.sendRedirect(request.getContextPath() + SIGN_IN
                + (why instanceof Door.MustWait wait ? "?wait=" + wait.seconds() : "?error"));
    }
}
