package puzzleworkshop.access.roles;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.lang.reflect.WildcardType;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.context.annotation.ClassPathScanningCandidateComponentProvider;
import org.springframework.core.type.filter.AnnotationTypeFilter;
import org.springframework.stereotype.Service;
import puzzleworkshop.measure.Confidential;
import puzzleworkshop.measure.Money;

/** The table of roles names every command of every service, and lets no money through. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class RoleTableTest {

    private final RoleTable table = RoleTable.read();

    /** A new command comes into {@code roles/ROOM.properties}, or this fails. */
    @Test
    void every_command_of_every_service_stands_in_the_table_and_nothing_else() {
        Set<String> commands = new TreeSet<>();
        commands().forEach(command -> commands.add(name(command)));
        assertThat(commands).hasSizeGreaterThan(300);
        assertThat(new TreeSet<>(table.lines().keySet())).isEqualTo(commands);
    }

    @Test
    void each_line_stands_in_the_file_of_its_room() throws Exception {
        for (Method command : commands()) {
            String room = command.getDeclaringClass().getPackageName().split("\\.")[1];
            try (var in = getClass().getResourceAsStream("/roles/" + room + ".properties")) {
                assertThat(in).as("roles/" + room + ".properties").isNotNull();
                assertThat(new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8))
                        .contains("\n" + name(command) + "=");
            }
        }
    }

    @Test
    void what_may_hold_money_comes_without_it_or_not_at_all() {
        List<String> open = commands().stream()
                .filter(command -> table.lines().get(name(command)) == May.ALL)
                .filter(command -> WithoutMoney.carries(command.getGenericReturnType()))
                .map(RoleTableTest::name)
                .toList();
        assertThat(open).isEmpty();
    }

    /** Only what is made of records, lists and maps can be made again without money. */
    @Test
    void no_money_hides_where_it_cannot_be_taken_out() {
        Set<String> hidden = new TreeSet<>();
        for (Method command : commands()) {
            if (table.lines().get(name(command)) == May.WITHOUT_MONEY) {
                hide(command.getGenericReturnType(), new HashSet<>(), name(command), hidden);
            }
        }
        assertThat(hidden).isEmpty();
    }

    private static void hide(Type type, Set<Type> seen, String path, Set<String> hidden) {
        if (!seen.add(type)) {
            return;
        }
        switch (type) {
            case ParameterizedType of -> {
                Arrays.stream(of.getActualTypeArguments()).forEach(part -> hide(part, seen, path, hidden));
                hide(of.getRawType(), seen, path, hidden);
            }
            case WildcardType any ->
                Arrays.stream(any.getUpperBounds()).forEach(part -> hide(part, seen, path, hidden));
            case Class<?> own
            when own.getName().startsWith("puzzleworkshop.")
                    && own != Money.class
                    && !Confidential.class.isAssignableFrom(own) -> {
                for (Field field : own.getDeclaredFields()) {
                    if (Modifier.isStatic(field.getModifiers())) {
                        continue;
                    }
                    if (!own.isRecord() && WithoutMoney.carries(field.getGenericType())) {
                        hidden.add(path + " → " + own.getSimpleName() + "." + field.getName());
                    }
                    hide(field.getGenericType(), seen, path + " → " + own.getSimpleName(), hidden);
                }
            }
            default -> {
                // nothing of ours
            }
        }
    }

    private static String name(Method command) {
        return command.getDeclaringClass().getSimpleName() + "." + command.getName();
    }

    static List<Method> commands() {
        var scan = new ClassPathScanningCandidateComponentProvider(false);
        scan.addIncludeFilter(new AnnotationTypeFilter(Service.class));
        List<Method> commands = new ArrayList<>();
        scan.findCandidateComponents("puzzleworkshop").forEach(found -> {
            try {
                Class<?> type = Class.forName(found.getBeanClassName());
                if (!GuardedServices.isService(type)) {
                    return;
                }
                for (Method method : type.getDeclaredMethods()) {
                    if (Modifier.isPublic(method.getModifiers())
                            && !Modifier.isStatic(method.getModifiers())
                            && !method.isSynthetic()) {
                        assertThat(Modifier.isFinal(method.getModifiers()))
                                .as(method + " can be guarded")
                                .isFalse();
                        commands.add(method);
                    }
                }
            } catch (ClassNotFoundException fault) {
                throw new IllegalStateException(fault);
            }
        });
        return commands;
    }
}
