package puzzleworkshop.demo;

import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.LocalTime;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.springframework.stereotype.Component;
import puzzleworkshop.delivery.boxes.Box;
import puzzleworkshop.delivery.boxes.Boxes;
import puzzleworkshop.delivery.labels.LabelSettings;
import puzzleworkshop.delivery.labels.ParcelPapers;
import puzzleworkshop.delivery.sending.Reach;
import puzzleworkshop.delivery.sending.SendingLimits;
import puzzleworkshop.delivery.sending.SendingPrice;
import puzzleworkshop.delivery.sending.SendingWay;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.delivery.sending.WayKind;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.planning.calendar.DeliveryWay;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.workshop.Workshop;

/** How things leave the demo workshop: what its boxes hold, what the made-up carrier takes and asks, words on labels. */
@Component
class DemoDelivery {

    private static final int DIVISOR = 5000;
    private static final Length GIRTH = Length.mm(3000);
    private static final Set<DayOfWeek> WORKDAYS = EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY);

    private final Boxes boxes;
    private final WorkingTimes times;
    private final SendingWays ways;
    private final ParcelPapers papers;
    private final Workshop workshop;

    DemoDelivery(Boxes boxes, WorkingTimes times, SendingWays ways, ParcelPapers papers, Workshop workshop) {
        this.boxes = boxes;
        this.times = times;
        this.ways = ways;
        this.papers = papers;
        this.workshop = workshop;
    }

    void prepare() {
        inside(DemoStock.FLAT_BOX, 320, 230, 40, 1.5, 120);
        inside(DemoStock.SMALL_BOX, 220, 155, 40, 1.5, 70);
        inside(DemoStock.BAG, 200, 150, 40, 0.5, 25);
        long abroad = times.save(new DeliveryWay(
                0,
                "Parcel abroad",
                WORKDAYS,
                LocalTime.of(16, 0),
                6,
                EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.SATURDAY)));
        for (SendingWay way : ways.all()) {
            ways.save(
                    way.kind() == WayKind.COLLECTION
                            ? collection(way)
                            : way.way().id() == abroad ? parcelAbroad(way) : parcel(way));
        }
        LabelSettings words = papers.settings();
        papers.save(new LabelSettings(
                "Made by hand from birch plywood.",
                "Keep it dry. Dust it with a soft brush.",
                words.hsCode(),
                words.contents(),
                words.gtin(),
                words.kind()));
    }

    private void inside(String name, double a, double b, double c, double wall, double grams) {
        boxes.supplies().stream()
                .filter(item -> item.name().equals(name))
                .findFirst()
                .ifPresent(item -> boxes.save(Box.of(
                        item, Length.mm(a), Length.mm(b), Length.mm(c), Length.mm(wall), grams, Optional.empty())));
    }

    private SendingWay collection(SendingWay way) {
        return new SendingWay(
                way.way(),
                way.kind(),
                SendingLimits.NONE,
                OptionalInt.empty(),
                "",
                "Monday to Friday, 15:00 to 18:00",
                SendingWay.USUAL_KEEPS_DAYS,
                List.of(),
                way.reach());
    }

    private SendingWay parcel(SendingWay way) {
        return parcel(
                way,
                List.of(
                        small(1_000, "4.40"),
                        upTo(2_000, "5.90"),
                        upTo(5_000, "7.60"),
                        upTo(10_000, "10.50"),
                        upTo(31_500, "17.90")),
                new Reach(Reach.Kind.HOME, Set.of()));
    }

    private SendingWay parcelAbroad(SendingWay way) {
        return parcel(
                way,
                List.of(upTo(1_000, "14.20"), upTo(2_000, "17.60"), upTo(5_000, "24.90"), upTo(10_000, "38.50")),
                Reach.ANYWHERE);
    }

    private SendingWay parcel(SendingWay way, List<SendingPrice> prices, Reach reach) {
        return new SendingWay(
                way.way(),
                way.kind(),
                new SendingLimits(OptionalInt.of(31_500), Optional.of(Length.mm(1200)), Optional.of(GIRTH)),
                OptionalInt.of(DIVISOR),
                "https://parcels.example/follow/" + SendingWay.CODE,
                "",
                SendingWay.USUAL_KEEPS_DAYS,
                prices,
                reach);
    }

    private SendingPrice small(int grams, String price) {
        return new SendingPrice(
                grams,
                Optional.of(Length.mm(350)),
                Optional.of(Length.mm(250)),
                Optional.of(Length.mm(80)),
                Optional.empty(),
                money(price));
    }

    private SendingPrice upTo(int grams, String price) {
        return new SendingPrice(
                grams, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), money(price));
    }

    private Money money(String amount) {
        return Money.of(new BigDecimal(amount), workshop.currency()).rounded();
    }
}
