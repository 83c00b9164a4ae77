package puzzleworkshop.support;

import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;

/** Points an application context at the {@link TestServer}. */
public class OnTestServer implements ApplicationContextInitializer<ConfigurableApplicationContext> {

    @Override
    public void initialize(ConfigurableApplicationContext context) {
        TestServer server = TestServer.shared();
        TestPropertyValues.of(
                        "spring.datasource.url=" + server.url(),
                        "spring.datasource.username=" + server.user(),
                        "spring.datasource.password=" + server.password(),
                        "spring.datasource.hikari.maximum-pool-size=12")
                .applyTo(context);
    }
}
