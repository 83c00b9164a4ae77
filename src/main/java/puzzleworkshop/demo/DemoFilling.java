package puzzleworkshop.demo;

import org.springframework.stereotype.Component;
import puzzleworkshop.access.DemoWorkshop;
import puzzleworkshop.measure.Sentence;

/** Fills the demo workshop: stock first, then the orders that use it. */
@Component
class DemoFilling implements DemoWorkshop {

    private static final double STOCK = 0.15;

    private final DemoStock stock;
    private final DemoWeek week;
    private final DemoOrders orders;
    private final DemoMoney money;

    DemoFilling(DemoStock stock, DemoWeek week, DemoOrders orders, DemoMoney money) {
        this.stock = stock;
        this.week = week;
        this.orders = orders;
        this.money = money;
    }

    @Override
    public void fill(Progress progress) {
        progress.reached(0, Sentence.of("demo.boards"));
        stock.boards();
        stock.supplies();
        stock.machine();
        week.prepare();
        for (int i = 0; i < orders.count(); i++) {
            progress.reached(
                    STOCK + (1 - STOCK) * i / orders.count(), Sentence.of("demo.order", i + 1, orders.count()));
            orders.play(i);
        }
        money.settle();
        progress.reached(1, Sentence.of("demo.ready"));
    }
}
