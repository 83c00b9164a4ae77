package puzzleworkshop.bench;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javax.imageio.ImageIO;
import org.springframework.beans.factory.BeanFactory;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.Pictures;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.DeliveryTerms;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderDraft;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.orders.preview.LaidPicture;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pricing.KeptPrice;
import puzzleworkshop.pricing.Pricing;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.sheets.SheetHolds;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.support.Nobody;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** Makes confirmed orders with a picture and a board, as tests of the bench and of the week need them. */
public final class BenchOrders {

    private static final Size FINISHED = Size.mm(200, 150);

    private final BeanFactory beans;
    private final boolean onePicture;
    private Picture shared;

    public BenchOrders(BeanFactory beans) {
        this(beans, false);
    }

    /** @param onePicture whether all orders show the same small picture, for tests that need many orders and no pictures */
    public BenchOrders(BeanFactory beans, boolean onePicture) {
        this.beans = beans;
        this.onePicture = onePicture;
    }

    /** Approved, with a board held for it, at PRINT. */
    public Order confirmed(String customer, LocalDate promised, double laserMinutes) {
        return Nobody.does(() -> withBoard(customer, promised, laserMinutes));
    }

    private Order withBoard(String customer, LocalDate promised, double laserMinutes) {
        Order order = approved(customer, promised, laserMinutes);
        holdBoard(order);
        return order;
    }

    /** A new board for an order: its first, or another after the first was cut. */
    public void holdBoard(Order order) {
        SheetRack rack = beans.getBean(SheetRack.class);
        SheetId board = rack.add(
                Outline.rectangle(Size.mm(400, 300)),
                BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                Money.of("4.00", beans.getBean(Workshop.class).currency().getCurrencyCode()),
                "Robin");
        beans.getBean(SheetHolds.class)
                .hold(board, order.ref(), new Placement(0, 0, 0), FINISHED.grownBy(Length.mm(11)), "Robin");
    }

    public Order confirmedWithoutBoard(String customer, LocalDate promised, double laserMinutes) {
        return Nobody.does(() -> approved(customer, promised, laserMinutes));
    }

    private Order approved(String customer, LocalDate promised, double laserMinutes) {
        Order order = waiting(customer, promised, laserMinutes);
        return beans.getBean(Orders.class).approve(order.id(), customer, "Robin");
    }

    public Order waitingForApproval(String customer, LocalDate promised, double laserMinutes) {
        return Nobody.does(() -> waiting(customer, promised, laserMinutes));
    }

    /** The same with a pattern that depends on the picture and its frame. */
    public Order waitingForApproval(String customer, LocalDate promised, Function<LaidPicture, PatternSpec> pattern) {
        return Nobody.does(() -> waiting(customer, promised, 20, pattern));
    }

    private Order waiting(String customer, LocalDate promised, double laserMinutes) {
        return waiting(
                customer,
                promised,
                laserMinutes,
                picture -> PatternSpec.of(picture.finished(), new PieceGrid(6, 4), 5));
    }

    private Order waiting(
            String customer, LocalDate promised, double laserMinutes, Function<LaidPicture, PatternSpec> pattern) {
        Orders orders = beans.getBean(Orders.class);
        Pricing pricing = beans.getBean(Pricing.class);
        Picture picture = picture();
        FramedPicture framed = new FramedPicture(picture.id(), Crop.filling(picture, FINISHED.aspect()));
        PriceQuestion question = pricing.typical(FINISHED, 24);
        Order quote = orders.quote(
                new OrderDraft(
                        Customer.newcomer(customer, "", ""),
                        1,
                        new Puzzle(
                                pattern.apply(new LaidPicture(framed, picture, FINISHED)),
                                IntendedAge.values()[IntendedAge.values().length - 1],
                                false),
                        BoardKind.of(BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3))),
                        Optional.of(framed),
                        "",
                        new DeliveryTerms(Optional.empty(), Optional.of(promised), false, Optional.empty()),
                        Minutes.of(laserMinutes),
                        new KeptPrice(question, pricing.quote(question)),
                        promised.plusDays(30),
                        ""),
                "Robin");
        return orders.confirm(quote.id(), promised, "Robin");
    }

    /** Ticks everything before the stage. */
    public void bringTo(OrderId order, Stage stage) {
        Bench bench = beans.getBean(Bench.class);
        for (Stage before : Stage.values()) {
            if (before.compareTo(stage) < 0) {
                Bench.Outcome outcome = bench.tick(BookingKey.fresh(), List.of(order), before, "Robin", "test");
                if (!outcome.refused().isEmpty()) {
                    throw new IllegalStateException(outcome.refused().toString());
                }
            }
        }
    }

    private Picture picture() {
        if (!onePicture) {
            return picture(1600, 1200);
        }
        if (shared == null) {
            shared = picture(160, 120);
        }
        return shared;
    }

    private Picture picture(int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < width; x++) {
            for (int y = 0; y < height; y++) {
                image.setRGB(
                        x, y, Color.HSBtoRGB(x / (float) width, 0.6f, 0.5f + 0.4f * (float) Math.sin((x + y) / 90.0)));
            }
        }
        try {
            ByteArrayOutputStream png = new ByteArrayOutputStream();
            ImageIO.write(image, "png", png);
            return beans.getBean(Pictures.class).take("lake.png", new ByteArrayInputStream(png.toByteArray()));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
