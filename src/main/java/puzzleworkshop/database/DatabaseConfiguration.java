package puzzleworkshop.database;

import com.zaxxer.hikari.HikariDataSource;
import java.time.Clock;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Condition;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.context.annotation.Conditional;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.type.AnnotatedTypeMetadata;
import puzzleworkshop.runtime.HouseClock;

@Configuration(proxyBeanMethods = false)
class DatabaseConfiguration {

    @Bean
    Clock clock() {
        return HouseClock.ofThisComputer();
    }

    /** Only where no server is named. The pool depends on the server's bean, so it closes first. */
    @Configuration(proxyBeanMethods = false)
    @Conditional(NoServerNamed.class)
    static class Embedded {

        @Bean
        EmbeddedServer embeddedServer(@Value("${puzzleworkshop.data:}") String folder) {
            return EmbeddedServer.on(folder);
        }

        @Bean
        HikariDataSource dataSource(EmbeddedServer server) {
            HikariDataSource pool = new HikariDataSource();
            pool.setPoolName("workshop");
            pool.setJdbcUrl(server.url());
            pool.setUsername(server.user());
            pool.setPassword(server.password());
            pool.setMaximumPoolSize(20);
            pool.setMinimumIdle(2);
            // Nobody waits half a minute to hear that the database is away.
            pool.setConnectionTimeout(10_000);
            return pool;
        }
    }

    static class NoServerNamed implements Condition {

        @Override
        public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
            return context.getEnvironment()
                    .getProperty("spring.datasource.url", "")
                    .isBlank();
        }
    }
}
