package puzzleworkshop.demo;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.geom.Area;
import java.awt.geom.CubicCurve2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.SplittableRandom;

/** What the demo's pictures are put together from: each draws one thing at a place, in the box of 300 × 200. */
final class Brush {

    private Brush() {}

    static void sky(Graphics2D g, Color low, Color high, double height) {
        g.setPaint(new GradientPaint(0, 0, high, 0, (float) height, low));
        g.fill(new Rectangle2D.Double(0, 0, 300, 200));
    }

    static void disc(Graphics2D g, double x, double y, double radius, Color colour) {
        g.setColor(new Color(colour.getRed(), colour.getGreen(), colour.getBlue(), 60));
        g.fill(new Ellipse2D.Double(x - radius * 1.6, y - radius * 1.6, radius * 3.2, radius * 3.2));
        g.setColor(colour);
        g.fill(new Ellipse2D.Double(x - radius, y - radius, radius * 2, radius * 2));
    }

    static void ridge(Graphics2D g, SplittableRandom random, double base, double height, Color colour) {
        Path2D path = new Path2D.Double();
        path.moveTo(-5, 205);
        path.lineTo(-5, base);
        for (double x = -5; x < 305; ) {
            double step = 14 + random.nextDouble(24);
            double peak = base - random.nextDouble(height);
            path.quadTo(x + step / 2, peak, x + step, base - random.nextDouble(height / 3));
            x += step;
        }
        path.lineTo(310, 205);
        path.closePath();
        g.setColor(colour);
        g.fill(path);
    }

    static void fir(Graphics2D g, double x, double foot, double height, Color colour) {
        g.setColor(colour);
        for (int tier = 0; tier < 4; tier++) {
            double top = foot - height + tier * height * 0.2;
            double half = height * (0.1 + tier * 0.06);
            Path2D triangle = new Path2D.Double();
            triangle.moveTo(x, top);
            triangle.lineTo(x - half, top + height * 0.36);
            triangle.lineTo(x + half, top + height * 0.36);
            triangle.closePath();
            g.fill(triangle);
        }
    }

    static void cloud(Graphics2D g, SplittableRandom random, double x, double y) {
        g.setColor(new Color(255, 255, 255, 150));
        Area cloud = new Area();
        for (int i = 0; i < 6; i++) {
            double w = 14 + random.nextDouble(16);
            cloud.add(new Area(new Ellipse2D.Double(x + i * 7, y - random.nextDouble(8), w, w * 0.55)));
        }
        g.fill(cloud);
    }

    static void house(Graphics2D g, double x, double y, double w, double h, Color wall, SplittableRandom random) {
        g.setColor(wall);
        g.fill(new Rectangle2D.Double(x, y, w, h));
        Path2D roof = new Path2D.Double();
        roof.moveTo(x - 1, y);
        roof.lineTo(x + w / 2, y - 12);
        roof.lineTo(x + w + 1, y);
        roof.closePath();
        g.setColor(new Color(0x7B3F35));
        g.fill(roof);
        for (int row = 0; row < (int) (h / 16); row++) {
            for (int column = 0; column < 3; column++) {
                g.setColor(random.nextInt(3) == 0 ? new Color(0xFFE3A0) : new Color(0x3A4A5C));
                g.fill(new Rectangle2D.Double(x + w * (0.14 + column * 0.28), y + 6 + row * 15, w * 0.16, 8));
            }
        }
    }

    static void boat(Graphics2D g, double x, double y, double s, Color hull) {
        Path2D body = new Path2D.Double();
        body.moveTo(x - 22 * s, y);
        body.curveTo(x - 14 * s, y + 9 * s, x + 14 * s, y + 9 * s, x + 22 * s, y - 2 * s);
        body.closePath();
        g.setColor(hull);
        g.fill(body);
        g.setColor(new Color(0x4A3626));
        g.setStroke(new BasicStroke((float) (0.9 * s)));
        g.draw(new java.awt.geom.Line2D.Double(x, y, x, y - 34 * s));
        Path2D sail = new Path2D.Double();
        sail.moveTo(x + 1 * s, y - 33 * s);
        sail.quadTo(x + 18 * s, y - 16 * s, x + 17 * s, y - 4 * s);
        sail.lineTo(x + 1 * s, y - 4 * s);
        sail.closePath();
        g.setColor(new Color(0xF8F2E4));
        g.fill(sail);
    }

    static void balloon(Graphics2D g, double x, double y, double r, Color one, Color other) {
        Path2D silk = new Path2D.Double();
        silk.moveTo(x - r * 0.22, y + r * 1.25);
        silk.curveTo(x - r * 1.5, y + r * 0.2, x - r * 1.05, y - r, x, y - r);
        silk.curveTo(x + r * 1.05, y - r, x + r * 1.5, y + r * 0.2, x + r * 0.22, y + r * 1.25);
        silk.closePath();
        g.setColor(one);
        g.fill(silk);
        java.awt.Shape clip = g.getClip();
        g.clip(silk);
        g.setColor(other);
        for (int i = -1; i <= 1; i++) {
            g.fill(new Ellipse2D.Double(x + i * r * 0.72 - r * 0.16, y - r * 1.1, r * 0.32, r * 2.5));
        }
        g.setPaint(new GradientPaint(
                (float) (x - r), 0, new Color(255, 255, 255, 70), (float) (x + r), 0, new Color(0, 0, 0, 70)));
        g.fill(silk);
        g.setClip(clip);
        g.setColor(new Color(0x5A4632));
        g.setStroke(new BasicStroke((float) (r * 0.03)));
        g.draw(new java.awt.geom.Line2D.Double(x - r * 0.2, y + r * 1.25, x - r * 0.14, y + r * 1.6));
        g.draw(new java.awt.geom.Line2D.Double(x + r * 0.2, y + r * 1.25, x + r * 0.14, y + r * 1.6));
        g.fill(new Rectangle2D.Double(x - r * 0.17, y + r * 1.6, r * 0.34, r * 0.26));
    }

    static void cat(Graphics2D g) {
        g.setPaint(new GradientPaint(80, 60, new Color(0xE29A4B), 150, 170, new Color(0xB9672A)));
        Path2D body = new Path2D.Double();
        body.moveTo(72, 164);
        body.curveTo(60, 120, 84, 92, 112, 92);
        body.curveTo(146, 92, 164, 122, 156, 164);
        body.closePath();
        g.fill(body);
        g.fill(new Ellipse2D.Double(80, 52, 60, 52));
        Path2D ears = new Path2D.Double();
        ears.moveTo(82, 70);
        ears.lineTo(84, 38);
        ears.lineTo(106, 56);
        ears.closePath();
        ears.moveTo(138, 70);
        ears.lineTo(136, 38);
        ears.lineTo(114, 56);
        ears.closePath();
        g.fill(ears);
        g.setStroke(new BasicStroke(9, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        g.draw(new CubicCurve2D.Double(152, 158, 196, 164, 196, 122, 180, 112));
        g.setColor(new Color(0x8A4A1C));
        g.setStroke(new BasicStroke(2.4f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        for (int i = 0; i < 5; i++) {
            g.draw(new CubicCurve2D.Double(76 + i, 118 + i * 9, 92, 112 + i * 9, 100, 116 + i * 9, 104, 122 + i * 9));
            g.draw(new CubicCurve2D.Double(152 - i, 118 + i * 9, 138, 112 + i * 9, 130, 116 + i * 9, 126, 122 + i * 9));
        }
        g.setColor(new Color(0xF4E3C8));
        g.fill(new Ellipse2D.Double(96, 80, 28, 20));
        g.setColor(new Color(0x2F6B4F));
        g.fill(new Ellipse2D.Double(91, 68, 11, 12));
        g.fill(new Ellipse2D.Double(118, 68, 11, 12));
        g.setColor(new Color(0x17120D));
        g.fill(new Ellipse2D.Double(95, 69, 3.6, 10));
        g.fill(new Ellipse2D.Double(122, 69, 3.6, 10));
        g.setColor(new Color(0xC76B6B));
        g.fill(new Ellipse2D.Double(106.5, 82, 7, 5));
        g.setColor(new Color(255, 255, 255, 190));
        g.setStroke(new BasicStroke(0.6f));
        for (int i = -1; i <= 1; i++) {
            g.draw(new java.awt.geom.Line2D.Double(98, 90 + i * 3, 70, 86 + i * 8));
            g.draw(new java.awt.geom.Line2D.Double(122, 90 + i * 3, 150, 86 + i * 8));
        }
    }

    static void leaf(Graphics2D g, double x, double y, double angle, double length, Color colour) {
        double tipX = x + Math.cos(angle) * length;
        double tipY = y + Math.sin(angle) * length;
        Path2D leaf = new Path2D.Double();
        leaf.moveTo(x, y);
        leaf.quadTo((x + tipX) / 2 - Math.sin(angle) * 5, (y + tipY) / 2 + Math.cos(angle) * 5, tipX, tipY);
        leaf.quadTo((x + tipX) / 2 + Math.sin(angle) * 5, (y + tipY) / 2 - Math.cos(angle) * 5, x, y);
        g.setColor(colour);
        g.fill(leaf);
    }

    static void flower(Graphics2D g, double x, double y, double r, Color petal) {
        g.setColor(petal);
        for (int i = 0; i < 5; i++) {
            double a = i * 2 * Math.PI / 5;
            g.fill(new Ellipse2D.Double(
                    x + Math.cos(a) * r * 0.6 - r * 0.5, y + Math.sin(a) * r * 0.6 - r * 0.5, r, r));
        }
        g.setColor(new Color(0xE9B93B));
        g.fill(new Ellipse2D.Double(x - r * 0.35, y - r * 0.35, r * 0.7, r * 0.7));
    }
}
