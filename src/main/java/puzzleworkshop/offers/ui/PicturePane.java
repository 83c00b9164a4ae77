package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.artwork.Pictures;
import puzzleworkshop.artwork.PrintLimits;
import puzzleworkshop.artwork.Resolution;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.reading.IntakeLimits;
import puzzleworkshop.artwork.ui.PictureJudgement;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.FileUpload;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.offers.ui.fields.FieldError;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.preview.LaidPicture;
import puzzleworkshop.printing.media.PrintMedia;

/** The customer's picture with the cut lines on it: dropped here, judged at once, framed for the size. */
class PicturePane extends Div {

    private static final String PICTURE = "#picture";
    private static final String CROP = "#crop";

    private final transient Pictures pictures;
    private final transient PrintMedia media;
    private final transient Length overhang;
    private final transient Formatter figures;
    private final transient Runnable changed;
    private final transient PrintLimits limits;
    private final PuzzlePreview preview;
    private final FieldError refusal;
    private final FieldError tooSoft;
    private final TextField softAccepted = new TextField(getTranslation("offers.new.soft-accepted"));
    private final Div verdicts = new Div();
    private final PaperNote paper;
    private transient Optional<Picture> picture = Optional.empty();
    private transient Optional<Crop> crop = Optional.empty();

    PicturePane(
            Pictures pictures,
            PrintMedia media,
            Length overhang,
            PrintLimits limits,
            Formatter figures,
            Runnable changed) {
        this.pictures = pictures;
        this.media = media;
        this.overhang = overhang;
        this.figures = figures;
        this.limits = limits;
        this.changed = changed;
        addClassNames("pw-section", "neworder-picture");
        refusal = new FieldError(Offer.Question.PICTURE, figures);
        tooSoft = new FieldError(Offer.Question.PICTURE, figures);
        FileUpload upload = new FileUpload(figures, IntakeLimits.USUAL.bytes(), refusal::say, file -> {
                    Picture taken = pictures.take(file.name(), file.path());
                    return () -> use(taken);
                })
                .labelled(getTranslation("offers.new.choose-picture"), getTranslation("offers.new.drop"));
        upload.setId("picture-upload");
        preview = new PuzzlePreview(overhang, framed -> {
            crop = Optional.of(framed);
            changed.run();
        });
        softAccepted.setHelperText(getTranslation("offers.new.soft-accepted.help"));
        softAccepted.setWidthFull();
        softAccepted.setVisible(false);
        softAccepted.setValueChangeMode(ValueChangeMode.ON_CHANGE);
        softAccepted.addValueChangeListener(event -> changed.run());
        verdicts.addClassName("pw-stack");
        paper = new PaperNote(figures);
        add(preview, upload, refusal, verdicts, paper, tooSoft, softAccepted);
    }

    /** Tells where the picture, or the bare wood, is tapped: shares of the finished puzzle. */
    void onTap(PuzzlePreview.Tapped tapped) {
        preview.onTap(tapped);
    }

    private void use(Picture taken) {
        refusal.say("");
        picture = Optional.of(taken);
        crop = Optional.empty();
        softAccepted.clear();
        changed.run();
    }

    void draft(Map<String, String> fields) {
        picture.ifPresent(p -> fields.put(PICTURE, p.id().value().toString()));
        crop.ifPresent(c -> fields.put(
                CROP,
                c.left() + " " + c.top() + " " + c.width() + " " + c.height() + " " + c.quarterTurns() + " " + c.fit()
                        + " " + c.borderColour() + " " + c.edge()));
    }

    /** A picture that was cleared away meanwhile is left out. */
    void restore(Map<String, String> fields) {
        if (!fields.containsKey(PICTURE)) {
            return;
        }
        picture = pictures.find(new PictureId(UUID.fromString(fields.get(PICTURE))));
        String[] kept = fields.getOrDefault(CROP, "").split(" ");
        if (picture.isPresent() && kept.length == 8) {
            crop = Optional.of(new Crop(
                    Double.parseDouble(kept[0]),
                    Double.parseDouble(kept[1]),
                    Double.parseDouble(kept[2]),
                    Double.parseDouble(kept[3]),
                    Integer.parseInt(kept[4]),
                    Crop.Fit.valueOf(kept[5]),
                    kept[6],
                    Crop.Edge.valueOf(kept[7])));
        }
    }

    /**
     * The picture and crop of an order made before; what was said of its softness was said then.
     *
     * @return false when its original was cleared, so that nothing could be printed from it
     */
    boolean begin(Order past) {
        if (past.picture()
                .map(framed -> !pictures.hasOriginal(framed.picture()))
                .orElse(false)) {
            return false;
        }
        take(past);
        softAccepted.clear();
        return true;
    }

    void take(Order order) {
        order.picture().ifPresent(framed -> {
            picture = pictures.find(framed.picture());
            crop = Optional.of(framed.crop());
        });
        softAccepted.setValue(order.softAccepted());
    }

    /**
     * The picture with its crop. One that was framed by hand is brought to the finished shape from what was framed, not
     * from what an earlier size made of it, so that trying sizes loses nothing; an untouched one fills the size.
     */
    Optional<FramedPicture> framed(Size finished) {
        return picture.map(p -> new FramedPicture(
                p.id(),
                crop.map(c -> c.hasAspect(p, finished.aspect()) ? c : c.matched(p, finished.aspect()))
                        .orElseGet(() -> Crop.filling(p, finished.aspect()))));
    }

    /** The same as it lies on the puzzle. */
    Optional<LaidPicture> laid(Size finished) {
        return framed(finished).map(framed -> new LaidPicture(framed, picture.orElseThrow(), finished));
    }

    String softAccepted() {
        return softAccepted.getValue().strip();
    }

    void show(Offer offer) {
        preview.show(picture, offer);
        tooSoft.show(offer);
        paper.show(offer.wish().puzzle().finished().grownBy(overhang), media.owned());
        verdicts.removeAll();
        boolean soft = offer.resolution()
                .map(r -> r.verdict() == Resolution.Verdict.REFUSE)
                .orElse(false);
        softAccepted.setVisible(soft);
        offer.resolution().ifPresent(resolution -> {
            PictureJudgement judgement = new PictureJudgement(figures);
            judgement.show(
                    picture.orElseThrow(),
                    framed(offer.wish().puzzle().finished()).orElseThrow().crop(),
                    resolution,
                    limits);
            verdicts.add(judgement);
        });
        if (picture.isEmpty()) {
            verdicts.add(new SmallText(getTranslation("offers.new.no-picture")));
        }
    }
}
