package puzzleworkshop.delivery.labels;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.delivery.PackedOrders;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.delivery.address.CountryFormat.Part;
import puzzleworkshop.delivery.address.PostalAddress;
import puzzleworkshop.delivery.boxes.Box;
import puzzleworkshop.delivery.boxes.Boxes;
import puzzleworkshop.delivery.sending.ParcelMeasure;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.preview.PuzzleDifficulty;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.PlainBoxes;
import puzzleworkshop.support.ReadPaper;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class ParcelPapersIT {

    private static final String WHO = "Robin";

    @Autowired
    BeanFactory beans;

    @Autowired
    ParcelPapers papers;

    @Autowired
    Parcels parcels;

    @Autowired
    Addresses addresses;

    @Autowired
    Boxes boxes;

    @Autowired
    Supplies supplies;

    @Autowired
    Workshop workshop;

    @Autowired
    PuzzleDifficulty difficulty;

    @Autowired
    Formatter texts;

    @Test
    void everything_of_one_parcel_stands_in_one_pdf() throws IOException {
        addresses.home("DE");
        List<Order> two = new PackedOrders(beans).of("Łucja Żółć", "Parcel", 2);
        addresses.keep(
                two.getFirst().id(),
                new PostalAddress(
                        "CH",
                        Map.of(
                                Part.NAME,
                                "Łucja Żółć",
                                Part.STREET,
                                "Seeweg 4",
                                Part.POSTAL_CODE,
                                "8001",
                                Part.TOWN,
                                "Nordhafen")),
                false,
                WHO);
        Parcel parcel = parcels.pack(two.stream().map(Order::id).toList(), WHO);
        assertThat(ReadPaper.text(papers.all(two.getFirst().id(), LabelKind.A4_2_X_4, 7, Optional.empty())))
                .contains("without the outer packing");
        parcels.weighed(parcel.id(), ParcelMeasure.of(1234, Length.mm(300), Length.mm(200), Length.mm(80)));
        byte[] pdf = papers.all(two.getFirst().id(), LabelKind.A4_2_X_4, 7, Optional.empty());
        Files.createDirectories(Path.of("target", "screens"));
        Files.write(Path.of("target", "screens", "parcel.pdf"), pdf);
        String text = ReadPaper.text(pdf).replaceAll("\\s+", " ");
        assertThat(text)
                .contains("Packing slip", two.getFirst().number(), two.getLast().number(), "Łucja Żółć")
                .contains("SWITZERLAND", "CH-8001 Nordhafen", "CUSTOMS DECLARATION", "9503.00 · DE")
                .contains("Keep dry and out of the sun")
                .as("the scale's word")
                .contains("1,234 g, weighed", "1.234");
        // the word comes from the pattern with its picture, as it does on the quote and the customer's page
        String word = texts.text(difficulty.of(two.getFirst()).textKey());
        assertThat(text).contains(two.getFirst().puzzle().pieces() + " pieces · how hard: " + word);
        try (PDDocument paper = Loader.loadPDF(pdf)) {
            // slip, two cards, address, customs data, and labels from the last place of one sheet on
            assertThat(paper.getNumberOfPages()).isEqualTo(1 + 2 + 1 + 1 + 2);
        }
    }

    @Test
    void the_smallest_box_in_stock_leaves_the_shelf_with_packing_and_comes_back_when_it_is_taken_back() {
        SupplyId large = box("large box", 300, 200, 60);
        SupplyId small = box("small box", 150, 120, 40);
        BenchOrders bench = new BenchOrders(beans, true);
        Order order = bench.confirmed("Ada Reed", workshop.today().plusDays(9), 10);
        bench.bringTo(order.id(), Stage.HAND_OVER);
        assertThat(stock(small)).isEqualByComparingTo("9");
        assertThat(stock(large)).isEqualByComparingTo("10");
        beans.getBean(puzzleworkshop.bench.Bench.class).undo(BookingKey.fresh(), order.id(), WHO);
        assertThat(stock(small)).isEqualByComparingTo("10");
        boxes.choose(order.id(), Optional.of(large), WHO);
        bench.bringTo(order.id(), Stage.PRINT);
        beans.getBean(puzzleworkshop.bench.Bench.class)
                .tick(BookingKey.fresh(), List.of(order.id()), Stage.PACK, WHO, "test");
        assertThat(stock(large)).isEqualByComparingTo("9");
        assertThat(boxes.weight(order, boxes.notes(List.of(order))).boxGrams()).isEqualTo(55);
        assertThat(boxes.reckoned(List.of(order), boxes.notes(List.of(order)))
                        .orElseThrow()
                        .longest())
                .isEqualTo(Length.mm(303));
    }

    private SupplyId box(String name, double a, double b, double c) {
        SupplyItem item = supplies.keep(PlainBoxes.named(name, workshop.currency()));
        supplies.buy(
                BookingKey.fresh(),
                item.id().orElseThrow(),
                BigDecimal.ONE,
                Money.of(new BigDecimal("6.00"), workshop.currency()),
                "",
                WHO);
        boxes.save(Box.of(item, Length.mm(a), Length.mm(b), Length.mm(c), Length.mm(1.5), 55, Optional.empty()));
        return item.id().orElseThrow();
    }

    private BigDecimal stock(SupplyId box) {
        return supplies.find(box).orElseThrow().stock();
    }
}
