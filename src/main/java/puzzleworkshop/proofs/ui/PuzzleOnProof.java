package puzzleworkshop.proofs.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Image;
import com.vaadin.flow.component.html.Paragraph;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.reading.IntakeLimits;
import puzzleworkshop.artwork.ui.CropEditor;
import puzzleworkshop.artwork.ui.PictureJudgement;
import puzzleworkshop.display.blocks.EmptyState;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.FileUpload;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Order;

/** The puzzle as it will be, and the ways to send another picture or frame it otherwise. */
class PuzzleOnProof extends Div {

    private final ProofView view;

    PuzzleOnProof(ProofView view) {
        this.view = view;
        addClassNames("pw-section", "proofs-puzzle");
        show();
    }

    private void show() {
        removeAll();
        Order order = view.sight().order();
        boolean open = order.mayStillChange();
        if (view.sight().picture().isEmpty()) {
            EmptyState empty =
                    new EmptyState(getTranslation("proofs.no-picture.title"), getTranslation("proofs.no-picture.next"));
            add(empty);
        } else {
            Image image = view.face();
            Div face = new Div(image);
            face.addClassName("pw-face");
            face.getStyle()
                    .set(
                            "--proofs-aspect",
                            String.valueOf(order.puzzle().finished().aspect()));
            add(face);
            if (open) {
                // Once it is printed no better file can be sent, so nothing is said of this one.
                add(judgement(view.sight().picture().orElseThrow(), order));
            }
            Paragraph hard = new Paragraph(view.figures()
                    .text("proofs.hard", getTranslation(view.difficulty().textKey())));
            hard.setId("how-hard");
            add(hard);
            if (open) {
                add(view.marks().on(face, image));
            }
        }
        if (open) {
            Div ways = new Div();
            ways.addClassName("proofs-ways");
            if (view.sight().picture().isPresent()) {
                ways.add(view.button("proofs.frame", false, this::edit));
            }
            ways.add(upload());
            add(ways);
            if (order.approval().isPresent()) {
                SmallText note = new SmallText(getTranslation("proofs.change-asks-again"));
                add(note);
            }
        }
    }

    private PictureJudgement judgement(Picture picture, Order order) {
        PictureJudgement judgement = new PictureJudgement(view.figures()).inPlainWords();
        judgement.show(
                picture,
                order.picture().orElseThrow().crop(),
                order.puzzle().finished(),
                view.overhang(),
                view.sight().limits());
        return judgement;
    }

    private FileUpload upload() {
        return new FileUpload(view.figures(), IntakeLimits.USUAL.bytes(), view::say, view::take)
                .labelled(
                        getTranslation(view.sight().picture().isPresent() ? "proofs.replace" : "proofs.send"),
                        getTranslation("proofs.drop"));
    }

    private void edit() {
        removeAll();
        Order order = view.sight().order();
        Picture picture = view.sight().picture().orElseThrow();
        FramedPicture framed = order.picture().orElseThrow();
        CropEditor editor = new CropEditor();
        editor.setFinishedSize(order.puzzle().finished());
        editor.setOverhang(view.overhang());
        editor.setPicture(picture, view.address("picture", 1600));
        editor.setCrop(framed.crop());
        editor.setCutLines(view.cutLines());
        PictureJudgement judgement = judgement(picture, order);
        editor.addCropListener(crop -> judgement.show(
                picture,
                crop,
                order.puzzle().finished(),
                view.overhang(),
                view.sight().limits()));
        Div ways = new Div(
                view.button(
                        "proofs.frame.keep",
                        true,
                        () -> view.ask(() -> view.desk()
                                .frame(
                                        view.token(),
                                        view.from(),
                                        editor.getCrop().orElseThrow()))),
                view.button("proofs.frame.leave", false, this::show));
        ways.addClassName("proofs-ways");
        add(editor, judgement, ways);
    }
}
