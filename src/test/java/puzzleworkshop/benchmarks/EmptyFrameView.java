package puzzleworkshop.benchmarks;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.router.RouteConfiguration;
import com.vaadin.flow.server.VaadinServletContext;
import com.vaadin.flow.server.startup.ApplicationRouteRegistry;
import jakarta.annotation.security.PermitAll;
import jakarta.servlet.ServletContext;
import org.springframework.context.ConfigurableApplicationContext;

/** Nothing in the program's frame: what every page has before it has anything of its own. */
@Route(value = EmptyFrameView.ADDRESS, registerAtStartup = false)
@PermitAll
public class EmptyFrameView extends Div {

    static final String ADDRESS = "nothing-in-the-frame";

    static void register(ConfigurableApplicationContext program) {
        RouteConfiguration.forRegistry(ApplicationRouteRegistry.getInstance(
                        new VaadinServletContext(program.getBean(ServletContext.class))))
                .setAnnotatedRoute(EmptyFrameView.class);
    }
}
