package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Image;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import java.io.ByteArrayInputStream;
import puzzleworkshop.bench.PackingProof;
import puzzleworkshop.bench.PackingProof.ProofPhoto;
import puzzleworkshop.bench.PackingProofs.Taken;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Svg;
import puzzleworkshop.display.SvgBox;

/** A photo of pieces with the edge of each drawn over it: known ones, and those of another puzzle. */
public class ProofPicture extends Div {

    private ProofPicture(Image image, ProofPhoto photo, Formatter figures) {
        addClassName("bench-proof-picture");
        SvgBox over = new SvgBox("bench-proof-edges");
        Svg svg = Svg.of(
                0,
                0,
                photo.width(),
                photo.height(),
                figures.text("bench.pieces.edges"),
                figures.text("bench.pieces.edges.words"));
        for (PackingProof.Edge edge : photo.edges()) {
            svg.path(edge.svgPathData(), edge.number() > 0 ? "bench-proof-known" : "bench-proof-foreign");
        }
        add(image, over.draw(svg));
    }

    /** One that was just taken. */
    public static ProofPicture of(Taken taken, ProofPhoto photo, Formatter figures) {
        byte[] jpeg = taken.jpeg();
        return new ProofPicture(
                new Image(
                        DownloadHandler.fromInputStream(event -> new DownloadResponse(
                                new ByteArrayInputStream(jpeg), "pieces.jpg", "image/jpeg", jpeg.length)),
                        figures.text("bench.pieces.photo")),
                photo,
                figures);
    }

    /** One that is kept. */
    public static ProofPicture of(PackingProof proof, int place, ProofPhoto photo, Formatter figures) {
        return new ProofPicture(
                new Image(
                        "packing-proofs/" + proof.id() + "/" + place + ".jpg",
                        figures.text("bench.pieces.photo.kept", proof.who(), figures.moment(proof.at()))),
                photo,
                figures);
    }
}
