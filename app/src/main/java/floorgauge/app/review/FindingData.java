package floorgauge.app.review;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import floorgauge.app.drawing.FigureText;
import floorgauge.app.drawing.PlanOfFloor;
import floorgauge.app.result.Replay;
import floorgauge.app.result.TracksWindow;
import floorgauge.app.store.FilmFolder;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredPossession;
import floorgauge.court.calibration.Homography;
import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.PaintedLine;
import floorgauge.court.rules.RuleSet;
import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.Mark;
import floorgauge.events.finding.Trail;
import floorgauge.events.finding.TrailPoint;
import java.util.List;

/** What the finding view moves and draws, as JSON: floor values in the court frame, times of the film. */
final class FindingData {

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final double ROOM_SECONDS = 1.5;
    private static final double STEP_SECONDS = 0.04;
    private static final int ARC_PIECES = 64;

    private FindingData() {}

    /** @param playable whether the film itself can be shown */
    static String of(
            StoredFilm film,
            StoredPossession possession,
            Finding finding,
            Names names,
            List<Double> pixelToFloor,
            boolean playable) {
        double from = Math.max(0, finding.fromSeconds() - ROOM_SECONDS);
        double to = Math.min(Math.max(film.durationSeconds(), finding.toSeconds()), finding.toSeconds() + ROOM_SECONDS);
        ObjectNode root = JSON.createObjectNode();
        root.put("film", playable ? "/film/" + film.id() : "")
                .put("pictures", playable ? "/data/film/" + film.id() + "/pictures?from=" + from + "&to=" + to : "")
                .put("width", film.widthPixels())
                .put("height", film.heightPixels())
                .put("from", from)
                .put("to", to)
                .put("start", finding.fromSeconds())
                .put("end", finding.toSeconds())
                .put("moment", PlanOfFloor.decisiveMoment(finding))
                .put("step", STEP_SECONDS);
        RuleSet rules = RuleSet.named(film.rules()).orElseGet(RuleSet::fiba);
        court(root.putObject("court"), rules, possession);
        matrix(root, pixelToFloor);
        ArrayNode roles = root.putArray("roles");
        finding.roles()
                .forEach(r -> roles.addObject().put("role", r.role().words()).put("track", r.trackId()));
        ArrayNode ticks = root.putArray("ticks");
        finding.ticks()
                .forEach(t -> ticks.addObject()
                        .put("at", t.timeSeconds())
                        .put("error", t.standardErrorSeconds())
                        .put("words", t.words()));
        ArrayNode marks = root.putArray("marks");
        finding.marks().forEach(m -> mark(marks, m));
        players(root, film, possession, names, from, to);
        ball(root, film, from, to);
        return root.toString();
    }

    private static void court(ObjectNode court, RuleSet rules, StoredPossession possession) {
        court.put("length", rules.lengthMetres())
                .put("width", rules.widthMetres())
                .put("sign", possession.possession().end().sign());
        FloorPoint rim = rules.rim(possession.possession().end());
        court.putArray("rim").add(rim.xMetres()).add(rim.yMetres());
        double board =
                possession.possession().end().sign() * (rules.lengthMetres() / 2 - rules.boardFromEndLineMetres());
        court.put("board", board);
        ArrayNode lines = court.putArray("lines");
        for (PaintedLine line : rules.paintedLines()) {
            ArrayNode points = lines.addArray();
            int pieces = line instanceof PaintedLine.Arc ? ARC_PIECES : 1;
            for (int i = 0; i <= pieces; i++) {
                FloorPoint point = line instanceof PaintedLine.Arc arc
                        ? arc.at(i / (double) pieces)
                        : i == 0 ? ((PaintedLine.Straight) line).from() : ((PaintedLine.Straight) line).to();
                points.addArray().add(round(point.xMetres())).add(round(point.yMetres()));
            }
        }
    }

    private static void matrix(ObjectNode root, List<Double> pixelToFloor) {
        if (pixelToFloor.size() != 9) {
            return;
        }
        double[] numbers =
                pixelToFloor.stream().mapToDouble(Double::doubleValue).toArray();
        ArrayNode matrix = root.putArray("floorToPixel");
        for (double value : Homography.of(numbers).inverse().rowMajor()) {
            matrix.add(value);
        }
    }

    private static void mark(ArrayNode marks, Mark mark) {
        if (mark instanceof Mark.Distance distance) {
            figure(
                    marks.addObject()
                            .put("draws", "distance")
                            .put("at", distance.timeSeconds())
                            .put("from", distance.fromTrackId())
                            .put("to", distance.toTrackId()),
                    distance.figure());
        } else if (mark instanceof Mark.DistanceToPoint distance) {
            ObjectNode node = marks.addObject()
                    .put("draws", "point")
                    .put("at", distance.timeSeconds())
                    .put("from", distance.fromTrackId());
            node.putArray("place")
                    .add(distance.to().xMetres())
                    .add(distance.to().yMetres());
            figure(node, distance.figure());
        } else if (mark instanceof Mark.Delay delay) {
            figure(
                    marks.addObject()
                            .put("draws", "delay")
                            .put("begins", delay.fromSeconds())
                            .put("ends", delay.toSeconds()),
                    delay.figure());
        }
    }

    private static void figure(ObjectNode node, Figure figure) {
        node.put("name", figure.name()).put("text", FigureText.of(figure)).put("beyond", FigureText.isBeyond(figure));
    }

    private static void players(
            ObjectNode root, StoredFilm film, StoredPossession possession, Names names, double from, double to) {
        ArrayNode players = root.putArray("players");
        List<Trail> trails;
        try {
            trails = Replay.of(FilmFolder.tracks(film), possession.possession(), from, to);
        } catch (MendableException e) {
            root.put("missing", "The tracks of this film cannot be read; measure it again.");
            return;
        }
        int samples = samples(from, to);
        for (Trail trail : trails) {
            ObjectNode player = players.addObject()
                    .put("track", trail.trackId())
                    .put("mark", names.mark(trail.trackId()))
                    .put("name", names.of(trail.trackId()))
                    .put("attacks", trail.attacking());
            double[][] way = new double[samples][];
            for (TrailPoint point : trail.points()) {
                int i = (int) Math.round((point.timeSeconds() - from) / STEP_SECONDS);
                if (i >= 0 && i < samples) {
                    way[i] = new double[] {
                        point.position().mean().xMetres(),
                        point.position().mean().yMetres(),
                        point.position().covariance().standardErrorMetres()
                    };
                }
            }
            ArrayNode places = player.putArray("way");
            for (double[] place : way) {
                if (place == null) {
                    places.addNull();
                } else {
                    places.addArray().add(round(place[0])).add(round(place[1])).add(round(place[2]));
                }
            }
        }
    }

    /** Nothing where the ball was not looked for. */
    private static void ball(ObjectNode root, StoredFilm film, double from, double to) {
        try {
            FilmFolder.ball(film, from - STEP_SECONDS, to + STEP_SECONDS)
                    .ifPresent(seen ->
                            new BallData(seen).sample(root.putArray("ball"), from, STEP_SECONDS, samples(from, to)));
        } catch (MendableException e) {
            root.put("missing", "The ball of this film cannot be read; measure it again.");
        }
    }

    private static int samples(double from, double to) {
        return (int) Math.round((to - from) / STEP_SECONDS) + 1;
    }

    /** Frames with everyone's box and joints, and the ball, in pixels. */
    static String pictures(StoredFilm film, double from, double to) {
        ObjectNode root = JSON.createObjectNode();
        ArrayNode frames = root.putArray("frames");
        BallData ball = new BallData(FilmFolder.ball(film, from, to).orElse(List.of()));
        for (TracksWindow.Picture picture : new TracksWindow(FilmFolder.tracks(film), from, to).pictures()) {
            ObjectNode frame = frames.addObject().put("at", picture.timeSeconds());
            ball.picture(frame, picture.timeSeconds());
            ArrayNode players = frame.putArray("players");
            for (TracksWindow.InPicture player : picture.players()) {
                ArrayNode numbers = players.addObject()
                        .put("track", player.trackId())
                        .put("guessed", player.predicted())
                        .putArray("numbers");
                for (double number : player.numbers()) {
                    if (Double.isNaN(number)) {
                        numbers.addNull();
                    } else {
                        numbers.add(Math.round(number * 100) / 100.0);
                    }
                }
            }
        }
        return root.toString();
    }

    private static double round(double value) {
        return Math.round(value * 1000) / 1000.0;
    }
}
