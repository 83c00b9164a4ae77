package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.util.Comparator;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import javax.sql.DataSource;
import org.springframework.beans.factory.config.BeanPostProcessor;

/** How long each statement of a program takes, by its text: hung around the program's connections while it starts. */
final class StatementTimes implements BeanPostProcessor {

    private record Taken(int times, double ms) {

        Taken plus(Taken more) {
            return new Taken(times + more.times, ms + more.ms);
        }
    }

    private final Map<String, Taken> taken = new ConcurrentHashMap<>();

    @Override
    public Object postProcessAfterInitialization(Object bean, String name) {
        return bean instanceof DataSource source && name.equals("dataSource")
                ? around(DataSource.class, source, "")
                : bean;
    }

    void forget() {
        taken.clear();
    }

    int statements() {
        return taken.values().stream().mapToInt(Taken::times).sum();
    }

    double ms() {
        return taken.values().stream().mapToDouble(Taken::ms).sum();
    }

    /** The dearest ones since they were last forgotten. */
    void print(PrintStream out, int most) {
        taken.entrySet().stream()
                .sorted(Comparator.comparingDouble(
                        (Map.Entry<String, Taken> one) -> -one.getValue().ms()))
                .limit(most)
                .forEach(one -> out.printf(
                        "    %7.1f ms %3d times  %s%n",
                        one.getValue().ms(),
                        one.getValue().times(),
                        one.getKey().replaceAll("\\s+", " ").strip()));
    }

    private <T> T around(Class<T> face, T within, String sql) {
        return face.cast(Proxy.newProxyInstance(
                StatementTimes.class.getClassLoader(), new Class<?>[] {face}, (proxy, method, arguments) -> {
                    long begin = System.nanoTime();
                    try {
                        Object answer = method.invoke(within, arguments);
                        return switch (answer) {
                            case PreparedStatement statement
                            when face == Connection.class ->
                                around(PreparedStatement.class, statement, (String) arguments[0]);
                            case Connection connection
                            when face == DataSource.class -> around(Connection.class, connection, "");
                            case null, default -> answer;
                        };
                    } catch (InvocationTargetException refused) {
                        throw refused.getCause();
                    } finally {
                        if (method.getName().startsWith("execute") && !sql.isEmpty()) {
                            double ms = (System.nanoTime() - begin) / 1e6;
                            taken.merge(sql, new Taken(1, ms), Taken::plus);
                        }
                    }
                }));
    }
}
