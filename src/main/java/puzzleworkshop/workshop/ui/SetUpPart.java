package puzzleworkshop.workshop.ui;

import com.vaadin.flow.component.Component;
import java.util.function.Supplier;

/**
 * One part of Set-up, made when it is opened: there are two dozen, and a person comes for one.
 *
 * @param titleKey of its heading, of which its address is made
 * @param content with that heading in it
 */
public record SetUpPart(String titleKey, Supplier<Component> content) {}
