package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import java.time.LocalDate;
import java.util.List;
import puzzleworkshop.planning.ReadyDay;

/** Whose promise a day too early would break, by name and days, before anybody confirms it. */
class HarmList extends Div {

    private static final int MOST_HARMED = 4;

    HarmList(ReadyDay forecast, LocalDate chosen) {
        List<ReadyDay.Harm> harmed = forecast.harmedBy(chosen);
        if (harmed.isEmpty()) {
            add(new Paragraph(getTranslation(
                    forecast.isPossible(chosen) ? "offers.new.too-early.buffers" : "offers.new.too-early.impossible")));
            return;
        }
        UnorderedList list = new UnorderedList();
        harmed.stream()
                .limit(MOST_HARMED)
                .map(harm -> new ListItem(getTranslation(
                        harm.lateBefore() ? "offers.new.harm.later" : "offers.new.harm",
                        harm.order(),
                        harm.customer(),
                        harm.daysLate())))
                .forEach(list::add);
        if (harmed.size() > MOST_HARMED) {
            list.add(new ListItem(getTranslation("offers.new.harm.more", harmed.size() - MOST_HARMED)));
        }
        list.addClassName("neworder-harm");
        add(list);
    }
}
