package puzzleworkshop.offers.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.ComponentUtil;
import com.vaadin.flow.component.HasValue;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.combobox.ComboBoxBase;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.notification.Notification;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.BigDecimalField;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.component.textfield.TextField;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.DayField;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderFilter;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.ui.OrderView;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Grain;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.Seeds;
import puzzleworkshop.workshop.Workshop;

/** What is kept is what stands on the form, however somebody types and whenever they press. */
@DatabaseTest
@Tag("slow")
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class NewOrderTypingIT extends SpringBrowserlessTest {

    private static final int TYPINGS = 500;
    private static final long OWN_SEED = 3820261L;

    @Autowired
    DataSource database;

    @Autowired
    Orders orders;

    @Autowired
    Machines machines;

    @Autowired
    RackSettings settings;

    @Autowired
    Workshop workshop;

    @Autowired
    Formatter figures;

    private Random random;
    private final List<String> done = new ArrayList<>();

    @BeforeEach
    void a_workshop_with_boards_to_buy() {
        CleanDatabase.now(database);
        machines.save(Machine.usual("Laser", workshop.currency()));
        for (double thickness : new double[] {3, 4}) {
            settings.save(new BoardOffer(
                    0,
                    "Birch " + thickness,
                    "birch-ply",
                    Grade.CRAFT,
                    Length.mm(thickness),
                    Size.mm(600, 400),
                    Grain.NONE,
                    Money.of(new BigDecimal("8"), workshop.currency()),
                    true));
        }
    }

    @Test
    void saving_at_once_keeps_the_size_the_pieces_and_the_number_that_were_typed_last() {
        random = new Random(1);
        NewOrderView page = navigate(NewOrderView.class);
        customer("Ada Reed");
        settle(page);
        length("width", "150");
        length("height", "100");
        pieces("12");
        test(find(IntegerField.class).withCaption("How many puzzles").single()).setValue(2);
        press("save-quote");
        settle(page);
        Order kept = orders.list(OrderFilter.ALL, 0, 5).getFirst();
        assertThat(kept.puzzle().finished()).isEqualTo(Size.mm(150, 100));
        assertThat(kept.puzzle().pieces()).isEqualTo(12);
        assertThat(kept.quantity()).isEqualTo(2);
        assertThat(getCurrentView()).isInstanceOf(OrderView.class);
    }

    @Test
    void a_field_that_cannot_be_read_clears_price_and_day_and_keeps_nothing() {
        random = new Random(1);
        NewOrderView page = navigate(NewOrderView.class);
        customer("Ada Reed");
        settle(page);
        assertThat(shown(page, "price")).isPresent();
        assertThat(shown(page, "ready")).isPresent();
        length("width", "abc");
        assertThat(shown(page, "price")).isEmpty();
        assertThat(shown(page, "ready")).isEmpty();
        press("save-quote");
        settle(page);
        assertThat(orders.count(OrderFilter.ALL)).isZero();
        length("width", "300");
        settle(page);
        assertThat(shown(page, "price")).isPresent();
        pieces("many");
        assertThat(shown(page, "price")).as("with words for pieces").isEmpty();
        pieces("48");
        settle(page);
        test(amount("Discount")).setValue(new BigDecimal("95"));
        assertThat(shown(page, "price")).as("with a discount out of range").isEmpty();
    }

    @Test
    void a_size_that_can_be_read_but_not_made_takes_the_proposed_day_away_with_the_price() {
        random = new Random(1);
        NewOrderView page = navigate(NewOrderView.class);
        customer("Ada Reed");
        settle(page);
        assertThat(shown(page, "ready")).isPresent();
        length("width", "30");
        length("height", "20");
        settle(page);
        assertThat(shown(page, "price")).isEmpty();
        assertThat(shown(page, "ready")).as("a day for what is not made").isEmpty();
        assertThat(find(ReadyPane.class).single().promised()).isEmpty();
        assertThat(find(Checkbox.class).all()).extracting(Checkbox::getLabel).contains("Rush");
        length("width", "300");
        length("height", "200");
        settle(page);
        assertThat(shown(page, "ready")).isPresent();
    }

    @Test
    void of_five_hundred_typings_with_presses_at_any_moment_nothing_differs_from_the_form() throws Exception {
        long seed = Seeds.from(OWN_SEED);
        random = new Random(seed);
        int presses = 0;
        int kept = 0;
        Optional<Order> changed = Optional.empty();
        NewOrderView page = navigate(NewOrderView.class);
        customer("Ada Reed");
        done.clear();
        for (int typing = 0; typing < TYPINGS; typing++) {
            type();
            if (random.nextInt(3) == 0) {
                Thread.sleep(random.nextInt(250));
                come();
            }
            if (random.nextInt(4) > 0) {
                continue;
            }
            presses++;
            int before = orders.count(OrderFilter.ALL);
            boolean confirm = random.nextInt(4) == 0;
            List<? extends HasValue<?, ?>> fields = fields(page);
            Runnable pressed = () -> press(confirm ? "confirm-order" : "save-quote");
            pressed.run();
            if (random.nextInt(3) == 0 && getCurrentView() == page) {
                type();
            }
            settle(page);
            if (getCurrentView() instanceof OrderView) {
                kept++;
                Order order = changed.map(o -> orders.get(o.id()))
                        .orElseGet(() -> orders.list(OrderFilter.ALL, 0, 1).getFirst());
                assertThat(orders.count(OrderFilter.ALL)).isEqualTo(changed.isPresent() ? before : before + 1);
                assertThat(differences(order, fields, page))
                        .as("seed %d, typing %d, %s", seed, typing, done)
                        .isEmpty();
                boolean again = order.state() == OrderState.QUOTE && random.nextBoolean();
                changed = again ? Optional.of(order) : Optional.empty();
                done.clear();
                page = again ? navigate(NewOrderView.class, order.number()) : navigate(NewOrderView.class);
                if (!again) {
                    customer("Customer " + typing);
                }
            } else {
                assertThat(orders.count(OrderFilter.ALL)).isEqualTo(before);
                assertThat(Stream.concat(
                                find(Notification.class).all().stream(),
                                find(Button.class).all().stream().filter(b -> !b.isEnabled())))
                        .as("either it says why, or it still works")
                        .isNotEmpty();
            }
        }
        assertThat(presses).isGreaterThan(90);
        assertThat(kept).isGreaterThan(40);
    }

    private void type() {
        int what = random.nextInt(15);
        switch (what) {
            case 0 -> length("width", pick("380", "300", "150", "297", "210,5", "8 in", "abc", "", "254.03"));
            case 1 -> length("height", pick("260", "200", "100", "210", "148,25", "6 in", "2oo", "203.2"));
            case 2 -> pieces(pick("12", "24", "48", "54", "many", "20", "35"));
            case 3 ->
                test(find(IntegerField.class).withCaption("How many puzzles").single())
                        .setValue(1 + random.nextInt(3));
            case 4 -> amount("Discount", pick("5", "12.5", "0", "95", "3.125", ""));
            case 5 -> amount("Delivery charged, net", pick("4.95", "0", "12", "3.999", ""));
            case 6 ->
                test(find(Checkbox.class).withCaption("With tray").single()).click();
            case 7 -> choose("Meant for");
            case 8 -> choose("Cut");
            case 9 -> choose("VAT on puzzles");
            case 10 -> choose("VAT on delivery");
            case 11 -> day("wanted-by");
            case 12 -> day("promised");
            case 13 -> test(find(TextArea.class).withCaption("Note").single()).setValue("note " + random.nextInt(99));
            default ->
                test(find(TextField.class).withCaption("E-mail or telephone").single())
                        .setValue("mail" + random.nextInt(99) + "@example.org");
        }
    }

    private String pick(String... of) {
        return of[random.nextInt(of.length)];
    }

    private void length(String id, String typed) {
        done.add(id + "=" + typed);
        LengthField field = find(LengthField.class).withId(id).single();
        test(find(TextField.class, field).single()).setValue(typed);
    }

    @SuppressWarnings("unchecked")
    private void pieces(String typed) {
        done.add("pieces=" + typed);
        ComboBox<Integer> pieces = find(ComboBox.class).withId("pieces").single();
        ComponentUtil.fireEvent(pieces, new ComboBoxBase.CustomValueSetEvent<>(pieces, true, typed));
    }

    @SuppressWarnings("unchecked")
    private void customer(String name) {
        ComboBox<Customer> customer = find(ComboBox.class).withId("customer").single();
        ComponentUtil.fireEvent(customer, new ComboBoxBase.CustomValueSetEvent<>(customer, true, name));
    }

    private BigDecimalField amount(String label) {
        return find(BigDecimalField.class).withCaption(label).single();
    }

    private void amount(String label, String typed) {
        done.add(label + "=" + typed);
        test(amount(label)).setValue(typed.isEmpty() ? null : new BigDecimal(typed));
    }

    @SuppressWarnings("unchecked")
    private <T> void choose(String label) {
        List<Select<T>> found = find(Select.class).all().stream()
                .filter(select -> label.equals(select.getLabel()) && select.isVisible())
                .map(select -> (Select<T>) select)
                .toList();
        for (Select<T> select : found) {
            List<T> items = select.getListDataView().getItems().toList();
            T item = items.get(random.nextInt(items.size()));
            done.add(label + "=" + item);
            test(select).selectItem(select.getItemLabelGenerator().apply(item));
        }
    }

    private void day(String id) {
        // the calendar of the promised day has no day that has passed
        int earliest = id.equals("promised") ? 0 : -3;
        LocalDate day = random.nextInt(5) == 0 ? null : workshop.today().plusDays(random.nextInt(40) + earliest);
        done.add(id + "=" + day);
        DayField field = find(DayField.class).withId(id).single();
        test(field).setValue(day);
    }

    private void press(String id) {
        Button button = find(Button.class).withId(id).single();
        if (button.isVisible() && button.isEnabled()) {
            done.add("press " + id);
            test(button).click();
        }
    }

    /** Until the answer has come and what waited for it is done. */
    private void settle(NewOrderView page) {
        for (int i = 0; i < 4000; i++) {
            come();
            if (getCurrentView() != page || !page.hasClassName("neworder-working")) {
                return;
            }
            try {
                Thread.sleep(15);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
        throw new AssertionError("No answer came.");
    }

    /** What other threads have brought meanwhile comes to the screen with the next look at it. */
    private void come() {
        find(NewOrderView.class).all();
    }

    private static Optional<String> shown(Component page, String id) {
        return parts(page)
                .filter(part -> part instanceof Span && part.getId().equals(Optional.of(id)))
                .map(part -> ((Span) part).getText())
                .filter(text -> !text.equals("–"))
                .findFirst();
    }

    private static Stream<Component> parts(Component page) {
        return Stream.concat(Stream.of(page), page.getChildren().flatMap(NewOrderTypingIT::parts));
    }

    private static List<? extends HasValue<?, ?>> fields(Component page) {
        return parts(page)
                .filter(part -> part instanceof HasValue<?, ?>)
                .map(part -> (HasValue<?, ?>) part)
                .toList();
    }

    private List<String> differences(Order order, List<? extends HasValue<?, ?>> fields, Component page) {
        List<String> wrong = new ArrayList<>();
        PriceQuestion price = orders.keptPrice(order.id()).question();
        for (HasValue<?, ?> field : fields) {
            Object said = field.getValue();
            String id = ((Component) field).getId().orElse("");
            String label = field instanceof com.vaadin.flow.component.HasLabel named ? "" + named.getLabel() : "";
            switch (id.isEmpty() ? label : id) {
                case "width" ->
                    same(wrong, "width", said, order.puzzle().finished().width());
                case "height" ->
                    same(wrong, "height", said, order.puzzle().finished().height());
                case "pieces" -> {
                    if (Math.abs((Integer) said - order.puzzle().pieces()) > (Integer) said / 4 + 2) {
                        wrong.add("pieces: " + said + " typed, kept "
                                + order.puzzle().pieces());
                    }
                }
                case "How many puzzles" -> same(wrong, label, said, order.quantity());
                case "Discount" ->
                    same(wrong, label, plain(said), plain(price.discount().hundredths()));
                case "Delivery charged, net" ->
                    same(wrong, label, plain(said), plain(price.shippingCharge().amount()));
                case "With tray" -> same(wrong, label, said, order.puzzle().tray());
                case "Meant for" -> same(wrong, label, said, order.puzzle().age());
                case "Cut" -> same(wrong, label, said, order.puzzle().pattern().style());
                case "VAT on puzzles" -> same(wrong, label, said, price.vat().puzzles());
                case "VAT on delivery" -> same(wrong, label, said, price.vat().shipping());
                case "wanted-by" -> same(wrong, id, said, order.wantedBy().orElse(null));
                case "promised" -> same(wrong, id, said, order.promised().orElse(null));
                case "Note" -> same(wrong, label, said, order.note());
                case "E-mail or telephone" ->
                    same(wrong, label, said, order.customer().contact());
                case "Board" -> same(wrong, label, said, order.board());
                case "customer" ->
                    same(wrong, id, ((Customer) said).name(), order.customer().name());
                default -> {
                    // presets, personal shapes and the like stand in no column of their own
                }
            }
        }
        same(
                wrong,
                "price",
                shown(page, "price").orElse(""),
                figures.money(order.price().gross()));
        return wrong;
    }

    private static BigDecimal plain(Object amount) {
        BigDecimal value = amount == null ? BigDecimal.ZERO : (BigDecimal) amount;
        return value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
    }

    private static void same(List<String> wrong, String what, Object form, Object kept) {
        boolean same = form instanceof Length a && kept instanceof Length b
                ? Math.abs(a.mm() - b.mm()) < 1e-9
                : Objects.equals(form, kept);
        if (!same) {
            wrong.add(what + ": " + form + " on the form, kept " + kept);
        }
    }
}
