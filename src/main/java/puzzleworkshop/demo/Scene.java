package puzzleworkshop.demo;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Area;
import java.awt.geom.CubicCurve2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.SplittableRandom;

/** The demo customers' pictures: drawn by code, each in a box of 300 × 200 scaled to the wanted pixels. */
enum Scene {
    LAKE {
        @Override
        void paint(Graphics2D g, SplittableRandom random) {
            sky(g, new Color(0xF7C59F), new Color(0x8FB8DE), 130);
            disc(g, 212, 62, 15, new Color(0xFFF1D0));
            ridge(g, random, 92, 34, new Color(0x7C93B5));
            ridge(g, random, 108, 24, new Color(0x536B8C));
            ridge(g, random, 122, 12, new Color(0x30495F));
            g.setPaint(new GradientPaint(0, 126, new Color(0x6E93AF), 0, 200, new Color(0x20384A)));
            g.fill(new Rectangle2D.Double(0, 126, 300, 74));
            for (int i = 0; i < 160; i++) {
                double y = 130 + random.nextDouble(68);
                double length = 4 + (y - 126) * random.nextDouble(0.5);
                g.setColor(new Color(255, 236, 205, 25 + random.nextInt(60)));
                g.fill(new Rectangle2D.Double(random.nextDouble(300), y, length, 0.5));
            }
            for (int i = 0; i < 26; i++) {
                double x = random.nextDouble(300);
                if (x < 110 || x > 240) {
                    fir(g, x, 196 + random.nextDouble(8), 26 + random.nextDouble(30), new Color(0x18 , 0x2E + random.nextInt(16), 0x2A));
                }
            }
        }
    },
    HARBOUR {
        @Override
        void paint(Graphics2D g, SplittableRandom random) {
            sky(g, new Color(0xCFE6F2), new Color(0x5D9CC4), 140);
            for (int i = 0; i < 5; i++) {
                cloud(g, random, 20 + i * 62, 22 + random.nextDouble(26));
            }
            Color[] walls = {new Color(0xD9694A), new Color(0xEFC46A), new Color(0x6FA8A1), new Color(0xE9DFC8), new Color(0xB2576B), new Color(0x8AA6C9)};
            double x = 0;
            for (int i = 0; x < 300; i++) {
                double width = 26 + random.nextDouble(14);
                double height = 44 + random.nextDouble(30);
                house(g, x, 142 - height, width, height, walls[i % walls.length], random);
                x += width;
            }
            g.setPaint(new GradientPaint(0, 142, new Color(0x3E7D9C), 0, 200, new Color(0x17384D)));
            g.fill(new Rectangle2D.Double(0, 142, 300, 58));
            for (int i = 0; i < 220; i++) {
                g.setColor(new Color(255, 255, 255, 20 + random.nextInt(60)));
                g.fill(new Rectangle2D.Double(random.nextDouble(300), 144 + random.nextDouble(56), 2 + random.nextDouble(12), 0.5));
            }
            boat(g, 52, 168, 1.2, new Color(0xB83A32));
            boat(g, 140, 180, 1.6, new Color(0x274C77));
            boat(g, 236, 164, 1.0, new Color(0x3B7A57));
        }
    },
    BALLOONS {
        @Override
        void paint(Graphics2D g, SplittableRandom random) {
            sky(g, new Color(0xFCE1C8), new Color(0x6FA9D8), 200);
            for (int i = 0; i < 7; i++) {
                cloud(g, random, random.nextDouble(280), 20 + random.nextDouble(100));
            }
            ridge(g, random, 176, 14, new Color(0x6D8F6A));
            ridge(g, random, 186, 10, new Color(0x49704C));
            Color[][] silks = {
                {new Color(0xC8423B), new Color(0xF4D58D)}, {new Color(0x2D6E8E), new Color(0xF2EFE6)},
                {new Color(0x7A4E8A), new Color(0xE7A9B8)}, {new Color(0x2F7D5B), new Color(0xF1C453)},
                {new Color(0xDB7B2B), new Color(0x3B4A6B)}
            };
            double[][] places = {{70, 70, 30}, {160, 46, 20}, {226, 84, 34}, {128, 116, 15}, {272, 36, 13}};
            for (int i = 0; i < places.length; i++) {
                balloon(g, places[i][0], places[i][1], places[i][2], silks[i][0], silks[i][1]);
            }
        }
    },
    CAT {
        @Override
        void paint(Graphics2D g, SplittableRandom random) {
            g.setPaint(new GradientPaint(0, 0, new Color(0xDCE7D3), 300, 200, new Color(0x8FB39A)));
            g.fill(new Rectangle2D.Double(0, 0, 300, 200));
            for (int i = 0; i < 90; i++) {
                g.setColor(new Color(70 + random.nextInt(60), 120 + random.nextInt(70), 80, 60));
                g.fill(new Ellipse2D.Double(random.nextDouble(300), random.nextDouble(120), 14 + random.nextDouble(30), 10 + random.nextDouble(24)));
            }
            g.setColor(new Color(0xF6F1E7));
            g.setStroke(new BasicStroke(7));
            g.draw(new Rectangle2D.Double(18, 8, 264, 200));
            g.draw(new java.awt.geom.Line2D.Double(150, 8, 150, 160));
            g.setPaint(new GradientPaint(0, 158, new Color(0xD8B98C), 0, 200, new Color(0xA97F4F)));
            g.fill(new Rectangle2D.Double(0, 158, 300, 42));
            cat(g);
            g.setColor(new Color(0xB5533C));
            g.fill(new Rectangle2D.Double(226, 128, 34, 32));
            for (int i = 0; i < 14; i++) {
                leaf(g, 243, 128, -2.6 + i * 0.16, 26 + random.nextDouble(20), new Color(0x3E, 0x7A + random.nextInt(40), 0x4A));
            }
        }
    },
    MEADOW {
        @Override
        void paint(Graphics2D g, SplittableRandom random) {
            sky(g, new Color(0xE9F2F7), new Color(0x86BCE0), 100);
            cloud(g, random, 60, 30);
            cloud(g, random, 190, 22);
            ridge(g, random, 88, 12, new Color(0x86A77B));
            g.setPaint(new GradientPaint(0, 96, new Color(0x9CBF6B), 0, 200, new Color(0x4E7A3C)));
            g.fill(new Rectangle2D.Double(0, 94, 300, 106));
            Color[] petals = {new Color(0xD8433B), new Color(0xF2C14E), new Color(0xF7F3EA), new Color(0x7C6BB0), new Color(0xE88FA6)};
            for (int i = 0; i < 900; i++) {
                double depth = Math.sqrt(random.nextDouble());
                double y = 98 + depth * 104;
                double radius = 0.6 + depth * 3.4;
                double x = random.nextDouble(300);
                g.setColor(new Color(0x3B, 0x66 + random.nextInt(30), 0x33));
                g.fill(new Rectangle2D.Double(x, y, Math.max(0.4, radius * 0.2), radius * 3));
                flower(g, x, y, radius, petals[random.nextInt(petals.length)]);
            }
        }
    },
    NIGHT_TRAIN {
        @Override
        void paint(Graphics2D g, SplittableRandom random) {
            sky(g, new Color(0x31476B), new Color(0x0C1426), 200);
            for (int i = 0; i < 260; i++) {
                g.setColor(new Color(255, 250, 230, 60 + random.nextInt(195)));
                double size = 0.4 + random.nextDouble(0.9);
                g.fill(new Ellipse2D.Double(random.nextDouble(300), random.nextDouble(120), size, size));
            }
            disc(g, 246, 40, 13, new Color(0xF5EBCB));
            ridge(g, random, 120, 30, new Color(0x1B2A44));
            ridge(g, random, 146, 14, new Color(0x121D31));
            g.setColor(new Color(0x0A1120));
            g.fill(new Rectangle2D.Double(0, 160, 300, 40));
            for (int i = 0; i < 9; i++) {
                g.fill(new Rectangle2D.Double(6 + i * 36, 158, 5, 42));
            }
            for (int i = 0; i < 6; i++) {
                double x = 34 + i * 42;
                g.setColor(i == 5 ? new Color(0x8E2F2B) : new Color(0x2F5D62));
                g.fill(new java.awt.geom.RoundRectangle2D.Double(x, 138, 40, 20, 4, 4));
                for (int w = 0; w < 4; w++) {
                    g.setPaint(new GradientPaint(0, 141, new Color(0xFFE7A3), 0, 150, new Color(0xF2B84B)));
                    g.fill(new Rectangle2D.Double(x + 4 + w * 9, 142, 6, 7));
                }
            }
        }
    };

    abstract void paint(Graphics2D g, SplittableRandom random);

    /** The scene at so many pixels, landscape three to two, with a little grain so that it is not flat for a judge of focus. */
    BufferedImage picture(int width, int height, long seed) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        double scale = Math.max(width / 300.0, height / 200.0);
        g.translate((width - 300 * scale) / 2, (height - 200 * scale) / 2);
        g.scale(scale, scale);
        paint(g, new SplittableRandom(seed));
        g.dispose();
        grain(image, seed);
        return image;
    }

    private static void grain(BufferedImage image, long seed) {
        int[] pixels = ((java.awt.image.DataBufferInt) image.getRaster().getDataBuffer()).getData();
        long state = seed | 1;
        for (int i = 0; i < pixels.length; i++) {
            state ^= state << 13;
            state ^= state >>> 7;
            state ^= state << 17;
            int shift = (int) (state & 15) - 7;
            int red = Math.clamp((pixels[i] >> 16 & 255) + shift, 0, 255);
            int green = Math.clamp((pixels[i] >> 8 & 255) + shift, 0, 255);
            int blue = Math.clamp((pixels[i] & 255) + shift, 0, 255);
            pixels[i] = red << 16 | green << 8 | blue;
        }
    }

    private static void sky(Graphics2D g, Color low, Color high, double height) {
        g.setPaint(new GradientPaint(0, 0, high, 0, (float) height, low));
        g.fill(new Rectangle2D.Double(0, 0, 300, 200));
    }

    private static void disc(Graphics2D g, double x, double y, double radius, Color colour) {
        g.setColor(new Color(colour.getRed(), colour.getGreen(), colour.getBlue(), 60));
        g.fill(new Ellipse2D.Double(x - radius * 1.6, y - radius * 1.6, radius * 3.2, radius * 3.2));
        g.setColor(colour);
        g.fill(new Ellipse2D.Double(x - radius, y - radius, radius * 2, radius * 2));
    }

    private static void ridge(Graphics2D g, SplittableRandom random, double base, double height, Color colour) {
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

    private static void fir(Graphics2D g, double x, double foot, double height, Color colour) {
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

    private static void cloud(Graphics2D g, SplittableRandom random, double x, double y) {
        g.setColor(new Color(255, 255, 255, 150));
        Area cloud = new Area();
        for (int i = 0; i < 6; i++) {
            double w = 14 + random.nextDouble(16);
            cloud.add(new Area(new Ellipse2D.Double(x + i * 7, y - random.nextDouble(8), w, w * 0.55)));
        }
        g.fill(cloud);
    }

    private static void house(Graphics2D g, double x, double y, double w, double h, Color wall, SplittableRandom random) {
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

    private static void boat(Graphics2D g, double x, double y, double s, Color hull) {
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

    private static void balloon(Graphics2D g, double x, double y, double r, Color one, Color other) {
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
        g.setPaint(new GradientPaint((float) (x - r), 0, new Color(255, 255, 255, 70), (float) (x + r), 0, new Color(0, 0, 0, 70)));
        g.fill(silk);
        g.setClip(clip);
        g.setColor(new Color(0x5A4632));
        g.setStroke(new BasicStroke((float) (r * 0.03)));
        g.draw(new java.awt.geom.Line2D.Double(x - r * 0.2, y + r * 1.25, x - r * 0.14, y + r * 1.6));
        g.draw(new java.awt.geom.Line2D.Double(x + r * 0.2, y + r * 1.25, x + r * 0.14, y + r * 1.6));
        g.fill(new Rectangle2D.Double(x - r * 0.17, y + r * 1.6, r * 0.34, r * 0.26));
    }

    private static void cat(Graphics2D g) {
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

    private static void leaf(Graphics2D g, double x, double y, double angle, double length, Color colour) {
        double tipX = x + Math.cos(angle) * length;
        double tipY = y + Math.sin(angle) * length;
        Path2D leaf = new Path2D.Double();
        leaf.moveTo(x, y);
        leaf.quadTo((x + tipX) / 2 - Math.sin(angle) * 5, (y + tipY) / 2 + Math.cos(angle) * 5, tipX, tipY);
        leaf.quadTo((x + tipX) / 2 + Math.sin(angle) * 5, (y + tipY) / 2 - Math.cos(angle) * 5, x, y);
        g.setColor(colour);
        g.fill(leaf);
    }

    private static void flower(Graphics2D g, double x, double y, double r, Color petal) {
        g.setColor(petal);
        for (int i = 0; i < 5; i++) {
            double a = i * 2 * Math.PI / 5;
            g.fill(new Ellipse2D.Double(x + Math.cos(a) * r * 0.6 - r * 0.5, y + Math.sin(a) * r * 0.6 - r * 0.5, r, r));
        }
        g.setColor(new Color(0xE9B93B));
        g.fill(new Ellipse2D.Double(x - r * 0.35, y - r * 0.35, r * 0.7, r * 0.7));
    }
}
