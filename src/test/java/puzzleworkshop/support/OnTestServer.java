package puzzleworkshop.support;

import java.time.Clock;
import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.support.GenericApplicationContext;

/** Points an application context at the {@link TestServer} and gives it a clock that tests can set. */
public class OnTestServer implements ApplicationContextInitializer<ConfigurableApplicationContext> {

    @Override
    public void initialize(ConfigurableApplicationContext context) {
        TestServer server = TestServer.shared();
        TestPropertyValues.of(
                        "spring.datasource.url=" + server.url(),
                        "spring.datasource.username=" + server.user(),
                        "spring.datasource.password=" + server.password(),
                        "spring.datasource.hikari.maximum-pool-size=12",
                        // what works in the background would read while a test empties the database
                        "puzzleworkshop.worths.every-millis=0",
                        "puzzleworkshop.data=target/test-data")
                .applyTo(context);
        ((GenericApplicationContext) context)
                .registerBean("testClock", Clock.class, TestClock::new, bean -> bean.setPrimary(true));
    }
}
