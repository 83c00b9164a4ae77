package puzzleworkshop.access;

import com.vaadin.flow.spring.security.RequestUtil;
import com.vaadin.flow.spring.security.VaadinSecurityConfigurer;
import jakarta.servlet.DispatcherType;
import java.time.Clock;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.HttpMethod;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authentication.ProviderManager;
import org.springframework.security.config.ObjectPostProcessor;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configuration.EnableWebSecurity;
import org.springframework.security.core.session.SessionRegistry;
import org.springframework.security.core.session.SessionRegistryImpl;
import org.springframework.security.crypto.factory.PasswordEncoderFactories;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.authentication.AuthenticationFailureHandler;
import org.springframework.security.web.header.HeaderWriter;
import org.springframework.security.web.header.HeaderWriterFilter;
import org.springframework.security.web.header.writers.CacheControlHeadersWriter;
import org.springframework.security.web.header.writers.DelegatingRequestMatcherHeaderWriter;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.session.HttpSessionEventPublisher;
import org.springframework.security.web.util.matcher.NegatedRequestMatcher;
import org.springframework.security.web.util.matcher.OrRequestMatcher;

/**
 * Everything asks for sign-in except what is listed here and views marked {@code @AnonymousAllowed}. CSRF tokens, a new
 * session at sign-in and the usual headers are Spring Security's own; the session cookie's flags stand in
 * application.properties.
 */
@Configuration(proxyBeanMethods = false)
@EnableWebSecurity
class SecurityConfiguration {

    private static final String[] OPEN_FILES = {
        "/healthz", "/*.css", "/*.js", "/*.svg", "/*.png", "/*.webmanifest", "/*.ico", "/*.woff2"
    };
    /** Pictures of the customer's page; it looks at the link's token itself. */
    private static final String[] CUSTOMERS_PICTURES = {"/p/*/face/*/*.jpg", "/p/*/picture/*/*.jpg"};

    /** Where somebody signs in: a screen of ours, known here by its address only. */
    private static final String SIGN_IN = "/sign-in";

    @Bean
    SecurityFilterChain doors(HttpSecurity http, SessionRegistry sessions, RequestUtil vaadin, StaySignedIn stay)
            throws Exception {
        http.authorizeHttpRequests(requests -> requests.dispatcherTypeMatchers(DispatcherType.ERROR)
                .permitAll()
                .requestMatchers(HttpMethod.GET, OPEN_FILES)
                .permitAll()
                .requestMatchers(HttpMethod.HEAD, OPEN_FILES)
                .permitAll()
                .requestMatchers(HttpMethod.GET, CUSTOMERS_PICTURES)
                .permitAll());
        // Without the last line what is no view (pictures, papers) would be refused even to people who are signed in.
        http.with(
                VaadinSecurityConfigurer.vaadin(),
                screens -> screens.loginView(SIGN_IN)
                        .enableCsrfConfiguration(false)
                        .anyRequest(request -> request.authenticated()));
        // Vaadin's own would leave the sign-in form without a token; its inner requests carry one that Vaadin checks.
        http.csrf(csrf -> csrf.ignoringRequestMatchers(vaadin::isFrameworkInternalRequest));
        http.formLogin(form -> form.failureHandler(refused()));
        http.rememberMe(kept -> kept.rememberMeServices(stay).key(StaySignedIn.KEY));
        http.sessionManagement(
                session -> session.maximumSessions(-1).sessionRegistry(sessions).expiredUrl(SIGN_IN + "?ended"));
        http.headers(headers -> headers.frameOptions(frame -> frame.sameOrigin())
                .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.SAME_ORIGIN))
                .contentSecurityPolicy(policy -> policy.policyDirectives(
                        "frame-ancestors 'self'; object-src 'self'; base-uri 'self'; form-action 'self'; "
                                // Vaadin starts with inline code and evaluates what the server sends; nothing from
                                // elsewhere.
                                + "script-src 'self' 'unsafe-inline' 'unsafe-eval'"))
                .cacheControl(cache -> cache.disable())
                .addHeaderWriter(keptByNobody())
                .addObjectPostProcessor(early()));
        return http.build();
    }

    @Bean
    AuthenticationManager doorkeeper(Accounts accounts, Clock clock) {
        return new ProviderManager(new PasswordAuthenticationProvider(accounts, new SignInThrottle(clock)));
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

    /** Pages are kept by no browser and no proxy; the bundle and the pictures say themselves how long they hold. */
    private static HeaderWriter keptByNobody() {
        PathPatternRequestMatcher.Builder path = PathPatternRequestMatcher.withDefaults();
        return new DelegatingRequestMatcherHeaderWriter(
                new NegatedRequestMatcher(new OrRequestMatcher(path.matcher("/VAADIN/**"), path.matcher("/*.css"))),
                new CacheControlHeadersWriter());
    }

    /** Screens are reached by a forward, which closes the answer before headers could be added at its end. */
    private static ObjectPostProcessor<HeaderWriterFilter> early() {
        return new ObjectPostProcessor<>() {
            @Override
            public <F extends HeaderWriterFilter> F postProcess(F filter) {
                filter.setShouldWriteHeadersEagerly(true);
                return filter;
            }
        };
    }

    private static AuthenticationFailureHandler refused() {
        return (request, response, why) -> response.sendRedirect(request.getContextPath()
                + SIGN_IN
                + (why instanceof PasswordAuthenticationProvider.MustWait wait ? "?wait=" + wait.seconds() : "?error"));
    }
}
