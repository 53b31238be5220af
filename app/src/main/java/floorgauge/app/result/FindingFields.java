package floorgauge.app.result;

import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.KeyFrame;
import floorgauge.events.finding.Mark;
import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.finding.Severity;
import floorgauge.events.finding.Threshold;
import floorgauge.events.finding.Tick;
import java.io.IOException;

/**
 * One finding of {@code findings.json}.
 *
 * @param json where the fields go
 */
record FindingFields(JsonFields json) {

    void write(Finding finding) throws IOException {
        json.word("kind", finding.kind());
        json.flag("flag", finding.kind().isFlag());
        json.text("label", finding.label());
        json.number("fromSeconds", finding.fromSeconds());
        json.number("toSeconds", finding.toSeconds());
        json.text("sentence", finding.sentence());
        json.number("probability", finding.probability());
        if (finding.severity().isPresent()) {
            json.object("severity", () -> severity(finding.severity().get()));
        }
        json.array("roles", finding.roles(), this::role);
        json.array("figures", finding.figures(), this::figure);
        json.array("frames", finding.frames(), this::frame);
        json.array("ticks", finding.ticks(), this::tick);
        json.array("marks", finding.marks(), this::mark);
        json.array("notSeen", finding.notSeen(), this::notSeen);
    }

    private void severity(Severity severity) throws IOException {
        json.number("level", severity.level());
        json.object("cost", () -> figure(severity.cost()));
    }

    private void role(RoleHolder holder) throws IOException {
        json.text("role", holder.role().words());
        json.whole("playerId", holder.trackId());
    }

    private void figure(Figure figure) throws IOException {
        json.text("name", figure.name());
        json.number("value", figure.value());
        json.number("standardError", figure.standardError());
        json.text("unit", figure.unit().symbol());
        if (figure.threshold().isPresent()) {
            json.object("heldAgainst", () -> threshold(figure.threshold().get()));
        }
    }

    private void threshold(Threshold threshold) throws IOException {
        json.text("standard", threshold.standard());
        json.number("value", threshold.value());
        json.word("sound", threshold.sound());
    }

    private void frame(KeyFrame frame) throws IOException {
        json.number("timeSeconds", frame.timeSeconds());
        json.text("caption", frame.caption());
    }

    private void tick(Tick tick) throws IOException {
        json.number("timeSeconds", tick.timeSeconds());
        json.number("standardErrorSeconds", tick.standardErrorSeconds());
        json.text("words", tick.words());
    }

    private void mark(Mark mark) throws IOException {
        if (mark instanceof Mark.Distance distance) {
            json.text("draws", "distance");
            json.number("timeSeconds", distance.timeSeconds());
            json.whole("fromPlayerId", distance.fromTrackId());
            json.whole("toPlayerId", distance.toTrackId());
            json.object("figure", () -> figure(distance.figure()));
        } else if (mark instanceof Mark.DistanceToPoint distance) {
            json.text("draws", "distance to point");
            json.number("timeSeconds", distance.timeSeconds());
            json.whole("fromPlayerId", distance.fromTrackId());
            json.number("toXMetres", distance.to().xMetres());
            json.number("toYMetres", distance.to().yMetres());
            json.object("figure", () -> figure(distance.figure()));
        } else if (mark instanceof Mark.Path path) {
            json.text("draws", "path");
            json.whole("playerId", path.trackId());
            json.number("fromSeconds", path.fromSeconds());
            json.number("toSeconds", path.toSeconds());
            json.object("figure", () -> figure(path.figure()));
        } else if (mark instanceof Mark.Area area) {
            json.text("draws", "area");
            json.number("timeSeconds", area.timeSeconds());
            json.wholes("playerIds", area.trackIds());
            json.object("figure", () -> figure(area.figure()));
        } else if (mark instanceof Mark.Delay delay) {
            json.text("draws", "delay");
            json.number("fromSeconds", delay.fromSeconds());
            json.number("toSeconds", delay.toSeconds());
            json.object("figure", () -> figure(delay.figure()));
        }
    }

    private void notSeen(NotSeen notSeen) throws IOException {
        json.text("what", notSeen.what());
        json.text("why", notSeen.why());
    }
}
