package puzzleworkshop.papers.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.AnchorTarget;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.ui.OrderPanel;

/** The job ticket on the page of an order, once it is confirmed. */
@org.springframework.stereotype.Component
class TicketPanel implements OrderPanel {

    private final Formatter figures;

    TicketPanel(Formatter figures) {
        this.figures = figures;
    }

    @Override
    public int place() {
        return 15;
    }

    @Override
    public Optional<Component> show(Order order, Runnable changed) {
        if (order.state() == OrderState.QUOTE || order.state() == OrderState.CANCELLED) {
            return Optional.empty();
        }
        Anchor ticket = new Anchor(
                "papers/" + order.number() + "/ticket.pdf", figures.text("papers.ticket.open"), AnchorTarget.BLANK);
        ticket.addClassName("pw-link-button");
        ticket.setRouterIgnore(true);
        ticket.setId("job-ticket");
        Div row = new Div(new Paragraph(figures.text("papers.ticket.lead")), ticket);
        row.addClassName("pw-row");
        PageSection section = new PageSection(figures.text("papers.ticket"), row);
        return Optional.of(section);
    }
}
