package puzzleworkshop.demo;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.SplittableRandom;

/** The demo customers' pictures: drawn by code, each in a box of 300 × 200 scaled to the wanted pixels. */
enum Scene {
    LAKE {
        @Override
        void paint(Graphics2D g, SplittableRandom random) {
            Brush.sky(g, new Color(0xF7C59F), new Color(0x8FB8DE), 130);
            Brush.disc(g, 212, 62, 15, new Color(0xFFF1D0));
            Brush.ridge(g, random, 92, 34, new Color(0x7C93B5));
            Brush.ridge(g, random, 108, 24, new Color(0x536B8C));
            Brush.ridge(g, random, 122, 12, new Color(0x30495F));
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
                    Brush.fir(
                            g,
                            x,
                            196 + random.nextDouble(8),
                            26 + random.nextDouble(30),
                            new Color(0x18, 0x2E + random.nextInt(16), 0x2A));
                }
            }
        }
    },
    HARBOUR {
        @Override
        void paint(Graphics2D g, SplittableRandom random) {
            Brush.sky(g, new Color(0xCFE6F2), new Color(0x5D9CC4), 140);
            for (int i = 0; i < 5; i++) {
                Brush.cloud(g, random, 20 + i * 62, 22 + random.nextDouble(26));
            }
            Color[] walls = {
                new Color(0xD9694A),
                new Color(0xEFC46A),
                new Color(0x6FA8A1),
                new Color(0xE9DFC8),
                new Color(0xB2576B),
                new Color(0x8AA6C9)
            };
            double x = 0;
            for (int i = 0; x < 300; i++) {
                double width = 26 + random.nextDouble(14);
                double height = 44 + random.nextDouble(30);
                Brush.house(g, x, 142 - height, width, height, walls[i % walls.length], random);
                x += width;
            }
            g.setPaint(new GradientPaint(0, 142, new Color(0x3E7D9C), 0, 200, new Color(0x17384D)));
            g.fill(new Rectangle2D.Double(0, 142, 300, 58));
            for (int i = 0; i < 220; i++) {
                g.setColor(new Color(255, 255, 255, 20 + random.nextInt(60)));
                g.fill(new Rectangle2D.Double(
                        random.nextDouble(300), 144 + random.nextDouble(56), 2 + random.nextDouble(12), 0.5));
            }
            Brush.boat(g, 52, 168, 1.2, new Color(0xB83A32));
            Brush.boat(g, 140, 180, 1.6, new Color(0x274C77));
            Brush.boat(g, 236, 164, 1.0, new Color(0x3B7A57));
        }
    },
    BALLOONS {
        @Override
        void paint(Graphics2D g, SplittableRandom random) {
            Brush.sky(g, new Color(0xFCE1C8), new Color(0x6FA9D8), 200);
            for (int i = 0; i < 7; i++) {
                Brush.cloud(g, random, random.nextDouble(280), 20 + random.nextDouble(100));
            }
            Brush.ridge(g, random, 176, 14, new Color(0x6D8F6A));
            Brush.ridge(g, random, 186, 10, new Color(0x49704C));
            Color[][] silks = {
                {new Color(0xC8423B), new Color(0xF4D58D)}, {new Color(0x2D6E8E), new Color(0xF2EFE6)},
                {new Color(0x7A4E8A), new Color(0xE7A9B8)}, {new Color(0x2F7D5B), new Color(0xF1C453)},
                {new Color(0xDB7B2B), new Color(0x3B4A6B)}
            };
            double[][] places = {{70, 70, 30}, {160, 46, 20}, {226, 84, 34}, {128, 116, 15}, {272, 36, 13}};
            for (int i = 0; i < places.length; i++) {
                Brush.balloon(g, places[i][0], places[i][1], places[i][2], silks[i][0], silks[i][1]);
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
                g.fill(new Ellipse2D.Double(
                        random.nextDouble(300),
                        random.nextDouble(120),
                        14 + random.nextDouble(30),
                        10 + random.nextDouble(24)));
            }
            g.setColor(new Color(0xF6F1E7));
            g.setStroke(new BasicStroke(7));
            g.draw(new Rectangle2D.Double(18, 8, 264, 200));
            g.draw(new java.awt.geom.Line2D.Double(150, 8, 150, 160));
            g.setPaint(new GradientPaint(0, 158, new Color(0xD8B98C), 0, 200, new Color(0xA97F4F)));
            g.fill(new Rectangle2D.Double(0, 158, 300, 42));
            Brush.cat(g);
            g.setColor(new Color(0xB5533C));
            g.fill(new Rectangle2D.Double(226, 128, 34, 32));
            for (int i = 0; i < 14; i++) {
                Brush.leaf(
                        g,
                        243,
                        128,
                        -2.6 + i * 0.16,
                        26 + random.nextDouble(20),
                        new Color(0x3E, 0x7A + random.nextInt(40), 0x4A));
            }
        }
    },
    MEADOW {
        @Override
        void paint(Graphics2D g, SplittableRandom random) {
            Brush.sky(g, new Color(0xE9F2F7), new Color(0x86BCE0), 100);
            Brush.cloud(g, random, 60, 30);
            Brush.cloud(g, random, 190, 22);
            Brush.ridge(g, random, 88, 12, new Color(0x86A77B));
            g.setPaint(new GradientPaint(0, 96, new Color(0x9CBF6B), 0, 200, new Color(0x4E7A3C)));
            g.fill(new Rectangle2D.Double(0, 94, 300, 106));
            Color[] petals = {
                new Color(0xD8433B), new Color(0xF2C14E), new Color(0xF7F3EA), new Color(0x7C6BB0), new Color(0xE88FA6)
            };
            for (int i = 0; i < 900; i++) {
                double depth = Math.sqrt(random.nextDouble());
                double y = 98 + depth * 104;
                double radius = 0.6 + depth * 3.4;
                double x = random.nextDouble(300);
                g.setColor(new Color(0x3B, 0x66 + random.nextInt(30), 0x33));
                g.fill(new Rectangle2D.Double(x, y, Math.max(0.4, radius * 0.2), radius * 3));
                Brush.flower(g, x, y, radius, petals[random.nextInt(petals.length)]);
            }
        }
    },
    NIGHT_TRAIN {
        @Override
        void paint(Graphics2D g, SplittableRandom random) {
            Brush.sky(g, new Color(0x31476B), new Color(0x0C1426), 200);
            for (int i = 0; i < 260; i++) {
                g.setColor(new Color(255, 250, 230, 60 + random.nextInt(195)));
                double size = 0.4 + random.nextDouble(0.9);
                g.fill(new Ellipse2D.Double(random.nextDouble(300), random.nextDouble(120), size, size));
            }
            Brush.disc(g, 246, 40, 13, new Color(0xF5EBCB));
            Brush.ridge(g, random, 120, 30, new Color(0x1B2A44));
            Brush.ridge(g, random, 146, 14, new Color(0x121D31));
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
}
