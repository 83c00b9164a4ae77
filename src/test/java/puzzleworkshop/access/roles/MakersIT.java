package puzzleworkshop.access.roles;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.security.authentication.TestingAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.papers.Receipts;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** Every command of every service, tried as a maker. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class MakersIT {

    @Autowired
    ApplicationContext beans;

    @Autowired
    DataSource database;

    @Autowired
    Orders orders;

    @Autowired
    Bench bench;

    private final RoleTable table = RoleTable.read();

    @BeforeEach
    void an_empty_workshop() {
        SecurityContextHolder.clearContext();
        CleanDatabase.now(database);
    }

    @org.junit.jupiter.api.AfterEach
    void nobody() {
        SecurityContextHolder.clearContext();
    }

    private static void sign(String role) {
        SecurityContextHolder.getContext()
                .setAuthentication(new TestingAuthenticationToken("Ines", "", "ROLE_" + role));
    }

    /** With nothing in its arguments no command gets far; what counts is whether the guard says no before it begins. */
    @Test
    void what_is_for_owners_is_refused_to_a_maker_and_all_else_is_not() {
        List<String> wrong = new ArrayList<>();
        TreeSet<String> refused = new TreeSet<>();
        for (Method command : RoleTableTest.commands()) {
            if (beans.getBeanNamesForType(command.getDeclaringClass()).length == 0) {
                continue; // a service of another kind of database
            }
            String name = command.getDeclaringClass().getSimpleName() + "." + command.getName();
            boolean forOwners = table.lines().get(name) == May.OWNER;
            if (forOwners) {
                sign("MAKER");
                if (!saysOwnersOnly(command)) {
                    wrong.add(name + " is not refused");
                }
                refused.add(name);
            }
        }
        assertThat(wrong).isEmpty();
        assertThat(refused).hasSizeGreaterThan(60);
    }

    private boolean saysOwnersOnly(Method command) {
        Object[] nothing = new Object[command.getParameterCount()];
        for (int i = 0; i < nothing.length; i++) {
            Class<?> type = command.getParameterTypes()[i];
            nothing[i] = type == long.class
                    ? (Object) 0L
                    : type == int.class
                            ? (Object) 0
                            : type == boolean.class ? (Object) false : type == double.class ? 0d : null;
        }
        try {
            command.invoke(beans.getBean(command.getDeclaringClass()), nothing);
            return false;
        } catch (InvocationTargetException thrown) {
            return thrown.getCause() instanceof Refused said
                    && said.sentence().key().equals("access.roles.owner-only");
        } catch (IllegalAccessException fault) {
            throw new IllegalStateException(fault);
        }
    }

    @Test
    void a_maker_ticks_an_order_through_though_the_invoice_behind_it_is_an_owners() {
        BenchOrders made = new BenchOrders(beans);
        Order order =
                made.confirmed("Ada Reed", beans.getBean(Workshop.class).today().plusDays(20), 25);
        made.bringTo(order.id(), Stage.HAND_OVER);
        sign("MAKER");
        assertThat(bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.HAND_OVER, "Ines", "phone")
                        .refused())
                .isEmpty();
    }

    @Test
    void an_order_its_history_and_its_price_come_without_costs_discount_and_payments() {
        BenchOrders made = new BenchOrders(beans);
        Order order =
                made.confirmed("Ada Reed", beans.getBean(Workshop.class).today().plusDays(20), 25);
        Money ten = Money.of(new java.math.BigDecimal("10"), order.price().net().currency());
        Invoices invoices = beans.getBean(Invoices.class);
        Receipts receipts = beans.getBean(Receipts.class);
        receipts.receive(
                BookingKey.fresh(),
                order.id(),
                ten,
                Payment.Way.CASH,
                beans.getBean(Workshop.class).today(),
                "",
                "Robin");
        assertThat(order.price().cost().isPositive()).isTrue();
        assertThat(orders.history(order.id()).toString()).contains("10.00");

        sign("MAKER");
        Order seen = orders.get(order.id());
        assertThat(seen.price().gross()).isEqualTo(order.price().gross());
        assertThat(seen.price().cost().isZero()).isTrue();
        assertThat(orders.history(order.id()))
                .hasSize(4)
                .noneMatch(line -> line.what().toString().contains("10.00"))
                .anyMatch(line -> line.what().key().equals("orders.history.approved"))
                .anyMatch(line -> line.what().equals(WithoutMoney.NOT_TOLD));
        var price = orders.keptPrice(order.id());
        assertThat(price.answer().toPay()).isEqualByComparingTo(order.price().gross());
        assertThat(price.answer().costs().lines()).isEmpty();
        assertThat(price.answer().earns().isZero()).isTrue();
        assertThat(price.question().boardCost().isZero()).isTrue();
        assertThatThrownBy(() -> invoices.account(order.id()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("access.roles.owner-only");

        sign("OWNER");
        assertThat(orders.get(order.id()).price().cost())
                .isEqualTo(order.price().cost());
        assertThat(invoices.account(order.id()).received()).isEqualByComparingTo(ten);
    }

    @Test
    void a_maker_who_corrects_a_board_leaves_what_it_carries_as_it_is() {
        new BenchOrders(beans)
                .confirmed("Ada Reed", beans.getBean(Workshop.class).today().plusDays(20), 25);
        SheetRack rack = beans.getBean(SheetRack.class);
        Sheet sheet = rack.list(RackFilter.inRack(), 0, 1).getFirst();
        assertThat(sheet.cost().isPositive()).isTrue();
        sign("MAKER");
        Sheet seen = rack.find(sheet.id()).orElseThrow();
        assertThat(seen.cost().isZero()).isTrue();
        rack.change(seen.id(), seen.facts().at("B7"), seen.cost(), seen.version(), "Ines");
        sign("OWNER");
        Sheet after = rack.find(sheet.id()).orElseThrow();
        assertThat(after.facts().place()).isEqualTo("B7");
        assertThat(after.cost()).isEqualTo(sheet.cost());
        assertThat(beans.getBean(Supplies.class).items()).isNotNull();
    }
}
