package floorgauge.eval.events;

import floorgauge.court.rules.RuleSet;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.finding.Trail;
import floorgauge.events.finding.TrailPoint;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;

/**
 * A contact sheet of screens for a person to check: on each panel six metres of floor about the screen, the ways of the four
 * involved from two seconds before its end, a dot where each was at the screen, and what was measured.
 */
final class ScreenSheet {

    private static final int PANEL = 240;
    private static final int CAPTION = 34;
    private static final int COLUMNS = 6;
    private static final double METRES = 6;

    private record Panel(String clip, Finding screen, List<Trail> trails) {}

    private final List<Panel> panels = new ArrayList<>();

    void add(String clip, Finding screen, List<Trail> trails) {
        panels.add(new Panel(clip, screen, trails));
    }

    int size() {
        return panels.size();
    }

    void write(Path file) throws IOException {
        int rows = Math.max(1, (panels.size() + COLUMNS - 1) / COLUMNS);
        BufferedImage image = new BufferedImage(COLUMNS * PANEL, rows * (PANEL + CAPTION), BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setColor(Color.WHITE);
        g.fillRect(0, 0, image.getWidth(), image.getHeight());
        for (int i = 0; i < panels.size(); i++) {
            Graphics2D part = (Graphics2D)
                    g.create(i % COLUMNS * PANEL, i / COLUMNS * (PANEL + CAPTION), PANEL - 4, PANEL + CAPTION - 4);
            draw(part, panels.get(i));
            part.dispose();
        }
        g.dispose();
        Files.createDirectories(file.getParent());
        ImageIO.write(image, "png", file.toFile());
    }

    private static void draw(Graphics2D g, Panel panel) {
        double at = moment(panel.screen());
        TrailPoint centre = at(trail(panel, Role.SCREENER), at);
        double cx = centre.position().mean().xMetres();
        double cy = centre.position().mean().yMetres();
        g.setColor(new Color(0xF3EFE6));
        g.fill(new Rectangle2D.Double(0, 0, PANEL, PANEL));
        rim(g, cx, cy);
        for (RoleHolder holder : panel.screen().roles()) {
            panel.trails().stream()
                    .filter(t -> t.trackId() == holder.trackId())
                    .forEach(t -> way(g, t, holder.role(), at, cx, cy));
        }
        g.setColor(Color.BLACK);
        g.setFont(g.getFont().deriveFont(10f));
        g.drawString(
                panel.clip()
                        + String.format(
                                Locale.ROOT,
                                " %.1f s, p %.2f",
                                at,
                                panel.screen().probability()),
                4,
                PANEL + 12);
        g.drawString(
                panel.screen().label()
                        + String.format(
                                Locale.ROOT,
                                ", gap %.2f m",
                                panel.screen().figure("gap").orElseThrow().value()),
                4,
                PANEL + 25);
    }

    private static void rim(Graphics2D g, double cx, double cy) {
        RuleSet rules = RuleSet.fiba();
        g.setColor(new Color(0xB9AE97));
        for (int sign = -1; sign <= 1; sign += 2) {
            double x = sign * (rules.lengthMetres() / 2 - rules.rimFromEndLineMetres());
            g.draw(new Ellipse2D.Double(
                    px(x - 0.225, cx), py(0.225, cy), px(0.45, 0) - px(0, 0), px(0.45, 0) - px(0, 0)));
            double line = sign * rules.lengthMetres() / 2;
            g.draw(new Line2D.Double(px(line, cx), py(-8, cy), px(line, cx), py(8, cy)));
        }
    }

    private static void way(Graphics2D g, Trail trail, Role role, double at, double cx, double cy) {
        Path2D path = new Path2D.Double();
        boolean begun = false;
        for (TrailPoint p : trail.points()) {
            if (p.timeSeconds() < at - 2 || p.timeSeconds() > at + 1.5) {
                continue;
            }
            double x = px(p.position().mean().xMetres(), cx);
            double y = py(p.position().mean().yMetres(), cy);
            if (begun) {
                path.lineTo(x, y);
            } else {
                path.moveTo(x, y);
                begun = true;
            }
        }
        g.setColor(colour(role));
        g.setStroke(new BasicStroke(1.6f));
        g.draw(path);
        TrailPoint here = at(trail, at);
        double x = px(here.position().mean().xMetres(), cx);
        double y = py(here.position().mean().yMetres(), cy);
        g.fill(new Ellipse2D.Double(x - 5, y - 5, 10, 10));
        g.drawString(letter(role), (float) x + 6, (float) y - 4);
    }

    private static Color colour(Role role) {
        return switch (role) {
            case SCREENER -> new Color(0x1B5E9B);
            case USER -> new Color(0xC4511A);
            default -> new Color(0x4A4A4A);
        };
    }

    private static String letter(Role role) {
        return switch (role) {
            case SCREENER -> "S";
            case USER -> "U";
            case USER_DEFENDER -> "D";
            default -> "E";
        };
    }

    private static Trail trail(Panel panel, Role role) {
        int id = panel.screen().holder(role).orElseThrow();
        return panel.trails().stream()
                .filter(t -> t.trackId() == id)
                .findFirst()
                .orElseThrow();
    }

    private static double moment(Finding screen) {
        return screen.ticks().stream()
                .filter(t -> t.words().equals("screen"))
                .findFirst()
                .orElseThrow()
                .timeSeconds();
    }

    private static TrailPoint at(Trail trail, double seconds) {
        TrailPoint best = trail.points().get(0);
        for (TrailPoint p : trail.points()) {
            best = Math.abs(p.timeSeconds() - seconds) < Math.abs(best.timeSeconds() - seconds) ? p : best;
        }
        return best;
    }

    private static double px(double x, double cx) {
        return PANEL / 2.0 + (x - cx) * PANEL / METRES;
    }

    private static double py(double y, double cy) {
        return PANEL / 2.0 - (y - cy) * PANEL / METRES;
    }
}
