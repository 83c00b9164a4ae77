package puzzleworkshop.demo;

import org.springframework.stereotype.Component;
import puzzleworkshop.access.DemoWorkshop;
import puzzleworkshop.measure.Sentence;

/** Fills the demo workshop: stock first, then a year that is over, then the orders of these days. */
@Component
class DemoFilling implements DemoWorkshop {

    private static final double STOCK = 0.06;
    private static final double YEAR = 0.5;

    private final DemoStock stock;
    private final DemoWeek week;
    private final DemoYear year;
    private final DemoOrders orders;
    private final DemoMoney money;

    DemoFilling(DemoStock stock, DemoWeek week, DemoYear year, DemoOrders orders, DemoMoney money) {
        this.stock = stock;
        this.week = week;
        this.year = year;
        this.orders = orders;
        this.money = money;
    }

    @Override
    public void fill(Progress progress) {
        progress.reached(0, Sentence.of("demo.boards"));
        stock.boards();
        stock.supplies();
        long former = stock.formerMachine();
        stock.machine(former);
        week.prepare();
        year.play((share, what) -> progress.reached(STOCK + (YEAR - STOCK) * share, what));
        for (int i = 0; i < orders.count(); i++) {
            progress.reached(YEAR + (1 - YEAR) * i / orders.count(), Sentence.of("demo.order", i + 1, orders.count()));
            orders.play(i);
        }
        money.settle();
        progress.reached(1, Sentence.of("demo.ready"));
    }
}
