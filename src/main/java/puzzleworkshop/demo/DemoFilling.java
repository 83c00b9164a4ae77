package puzzleworkshop.demo;

import org.springframework.stereotype.Component;
import puzzleworkshop.access.DemoWorkshop;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.runtime.HouseClock;
import puzzleworkshop.workshop.Workshop;

/** Fills the demo workshop: stock first, then a year that is over, then the orders of these days. */
@Component
class DemoFilling implements DemoWorkshop {

    private static final double STOCK = 0.04;
    private static final double PICTURES = 0.15;
    private static final double YEAR = 0.6;

    /** Before the first order of these days was cut from one. */
    private static final int BOARDS_CAME = 33;

    private final DemoStock stock;
    private final DemoWeek week;
    private final DemoDelivery delivery;
    private final DemoPictures pictures;
    private final DemoYear year;
    private final DemoOrders orders;
    private final DemoMoney money;
    private final Workshop workshop;

    DemoFilling(
            DemoStock stock,
            DemoWeek week,
            DemoDelivery delivery,
            DemoPictures pictures,
            DemoYear year,
            DemoOrders orders,
            DemoMoney money,
            Workshop workshop) {
        this.stock = stock;
        this.week = week;
        this.delivery = delivery;
        this.pictures = pictures;
        this.year = year;
        this.orders = orders;
        this.money = money;
        this.workshop = workshop;
    }

    @Override
    public void fill(Progress progress) {
        progress.reached(0, Sentence.of("demo.boards"));
        DemoPictures.Drawing scenes = pictures.begin();
        HouseClock.at(
                workshop.today()
                        .minusDays(BOARDS_CAME)
                        .atTime(9, 0)
                        .atZone(workshop.zone())
                        .toInstant(),
                () -> {
                    stock.boards();
                    week.boards();
                });
        stock.supplies();
        long former = stock.formerMachine();
        stock.machine(former);
        week.prepare();
        delivery.prepare();
        progress.reached(STOCK, Sentence.of("demo.pictures"));
        scenes.of(Scene.values()[0]); // the others are there by the time an order needs them
        year.play(scenes, (share, what) -> progress.reached(PICTURES + (YEAR - PICTURES) * share, what));
        for (int i = 0; i < orders.count(); i++) {
            progress.reached(YEAR + (1 - YEAR) * i / orders.count(), Sentence.of("demo.order", i + 1, orders.count()));
            orders.play(i, scenes);
        }
        money.settle();
        progress.reached(1, Sentence.of("demo.ready"));
    }
}
