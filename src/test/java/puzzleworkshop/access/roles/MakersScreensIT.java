package puzzleworkshop.access.roles;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.router.RouteConfiguration;
import jakarta.annotation.security.PermitAll;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.orders.Order;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** Every page that is open to makers opens for one, and shows what is left instead of a fault. */
@DatabaseTest
@Tag("slow")
@WithMockUser(username = "Ines", roles = "MAKER")
@DisplayNameGeneration(ReplaceUnderscores.class)
class MakersScreensIT extends SpringBrowserlessTest {

    @Autowired
    ApplicationContext beans;

    @Autowired
    DataSource database;

    @Autowired
    Workshop workshop;

    @Test
    void every_page_open_to_makers_opens() {
        CleanDatabase.now(database);
        Order order = byTheProgram(() -> {
            BenchOrders made = new BenchOrders(beans);
            Order one = made.confirmed("Ada Reed", workshop.today().plusDays(20), 25);
            made.bringTo(one.id(), Stage.CUT);
            return one;
        });
        List<String> wrong = new ArrayList<>();
        List<String> opened = new ArrayList<>();
        for (String path : paths(order)) {
            try {
                UI.getCurrentOrThrow().navigate(path);
                Component view = (Component) getCurrentView();
                find(Component.class, view).all();
                opened.add(path);
                if (view.getClass().getSimpleName().contains("Fault")) {
                    wrong.add(path + ": a fault");
                }
            } catch (RuntimeException fault) {
                wrong.add(path + ": " + fault);
            }
        }
        assertThat(wrong).isEmpty();
        assertThat(opened).hasSizeGreaterThan(10);
    }

    private static List<String> paths(Order order) {
        Stream<String> plain = RouteConfiguration.forSessionScope().getAvailableRoutes().stream()
                .filter(route -> route.getNavigationTarget().isAnnotationPresent(PermitAll.class))
                .map(route -> route.getTemplate())
                .map(template -> template.replaceAll("/:[^/]*", ""))
                .filter(template -> !template.contains(":"));
        return Stream.concat(plain, Stream.of("orders/" + order.number(), "bench/cut", "bench/print"))
                .distinct()
                .sorted()
                .toList();
    }

    private static <T> T byTheProgram(java.util.function.Supplier<T> work) {
        SecurityContext maker = SecurityContextHolder.getContext();
        SecurityContextHolder.clearContext();
        try {
            return work.get();
        } finally {
            SecurityContextHolder.setContext(maker);
        }
    }
}
