package puzzleworkshop.orders.preview;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.springframework.stereotype.Component;
import puzzleworkshop.artwork.CroppedPictures;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.runtime.VersionedCache;

/**
 * Paints the face of a puzzle: the customer's picture as it is framed, with the cut lines on it, at the size of a screen or
 * a paper. It carries no metadata.
 */
@Component
public class PreviewRenderer {

    private static final Color WOOD = new Color(0xE6D3B3);
    private static final float QUALITY = 0.86f;
    /** Line width in pixels for each 1000 pixels of picture; a hair on small ones. */
    private static final double LINE = 1.6;

    private static final long MOST_BYTES = 16 << 20;
    private static final int BYTES_PER_PIXEL = 4;

    private final CroppedPictures pictures;
    private final PatternCache shelf;
    private final VersionedCache<Look, byte[]> kept = VersionedCache.<Look, byte[]>ofWeight(
                    MOST_BYTES, face -> face.length)
            .restingOnTheQuestion();
    /** A picture as it is framed, without lines: it stays the same while its pieces are chosen. */
    private final VersionedCache<Bare, BufferedImage> bare = VersionedCache.<Bare, BufferedImage>ofWeight(
                    MOST_BYTES, face -> face.getWidth() * face.getHeight() * BYTES_PER_PIXEL)
            .restingOnTheQuestion();

    PreviewRenderer(CroppedPictures pictures, PatternCache shelf) {
        this.pictures = pictures;
        this.shelf = shelf;
    }

    /** All that a face shows; pictures never change under their number. */
    private record Look(PatternSpec pattern, Size finished, Optional<FramedPicture> framed, int longerSide) {}

    private record Bare(FramedPicture framed, Size finished, int longerSide) {}

    /** As JPEG, the longer side so many pixels; painted once and kept for a while. */
    public byte[] jpeg(Puzzle puzzle, Optional<FramedPicture> framed, int longerSide) {
        return kept.get(
                new Look(puzzle.pattern(), puzzle.finished(), framed, longerSide),
                () -> encode(paint(puzzle, framed, longerSide)));
    }

    /** Bare wood with cut lines when there is no picture yet. */
    public BufferedImage paint(Puzzle puzzle, Optional<FramedPicture> framed, int longerSide) {
        Size size = puzzle.finished();
        double scale = longerSide / size.longerSide().mm();
        int width = Math.max(1, (int) Math.round(size.width().mm() * scale));
        int height = Math.max(1, (int) Math.round(size.height().mm() * scale));
        BufferedImage face = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = face.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        CutPattern pattern = shelf.of(puzzle.pattern());
        if (puzzle.pattern().outline().isCurved()) {
            g.setColor(Color.WHITE);
            g.fillRect(0, 0, width, height);
            g.setClip(path(List.of(pattern.outline()), scale));
        }
        g.setColor(WOOD);
        g.fillRect(0, 0, width, height);
        framed.ifPresent(f -> g.drawImage(bare(new Bare(f, size, longerSide)), 0, 0, width, height, null));
        g.setClip(null);
        drawLines(g, pattern, scale, longerSide);
        g.dispose();
        return face;
    }

    private BufferedImage bare(Bare asked) {
        FramedPicture framed = asked.framed();
        return bare.get(
                asked, () -> pictures.face(framed.picture(), framed.crop(), asked.finished(), asked.longerSide()));
    }

    private void drawLines(Graphics2D g, CutPattern pattern, double scale, int longerSide) {
        List<CurvePath> all = new ArrayList<>(pattern.inner());
        all.add(pattern.outline());
        Path2D lines = path(all, scale);
        float width = (float) Math.max(0.55, LINE * longerSide / 1000);
        g.setColor(new Color(255, 255, 255, 110));
        g.setStroke(new BasicStroke(width * 2.2f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        g.draw(lines);
        g.setColor(new Color(25, 20, 15, 205));
        g.setStroke(new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        g.draw(lines);
    }

    private static Path2D path(List<CurvePath> paths, double scale) {
        Path2D lines = new Path2D.Double();
        paths.forEach(path -> append(lines, path));
        lines.transform(AffineTransform.getScaleInstance(scale, scale));
        return lines;
    }

    private static void append(Path2D lines, CurvePath path) {
        lines.moveTo(path.start().xMm(), path.start().yMm());
        for (Segment segment : path.segments()) {
            switch (segment) {
                case Segment.Line line ->
                    lines.lineTo(line.to().xMm(), line.to().yMm());
                case Segment.Cubic cubic ->
                    lines.curveTo(
                            cubic.control1().xMm(), cubic.control1().yMm(),
                            cubic.control2().xMm(), cubic.control2().yMm(),
                            cubic.to().xMm(), cubic.to().yMm());
            }
        }
    }

    private static byte[] encode(BufferedImage image) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
            ImageWriteParam how = writer.getDefaultWriteParam();
            how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            how.setCompressionQuality(QUALITY);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), how);
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
