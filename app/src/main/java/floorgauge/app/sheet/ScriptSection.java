package floorgauge.app.sheet;

import floorgauge.app.drawing.FigureText;
import floorgauge.events.finding.ScriptReading;
import java.util.stream.Collectors;

/** Writes how a possession agrees with a script: one sentence, who had which role, then the steps. */
record ScriptSection(Html html) {

    void write(ScriptReading reading) {
        html.open("section", "class=\"script\"");
        html.element("h3", "Script");
        html.element("p", reading.sentence());
        html.element("p", "class=\"aside\"", aside(reading));
        html.open("ol");
        for (int i = 0; i < reading.steps().size(); i++) {
            boolean breakdown = reading.breakdown().orElse(-1) == i;
            step(reading.steps().get(i), breakdown);
        }
        html.close("ol").close("section");
    }

    private static String aside(ScriptReading reading) {
        return "It was " + reading.script() + ", " + FigureText.sureness(reading.probability())
                + (reading.mirrored() ? ", run to the other side" : "") + ". "
                + reading.roles().stream()
                        .map(r -> r.role() + " is #" + r.trackId())
                        .collect(Collectors.joining(", "))
                + ".";
    }

    private void step(ScriptReading.StepReading step, boolean breakdown) {
        html.open("li", breakdown ? "class=\"breakdown\"" : "");
        html.text(step.words() + ": " + step.state().words());
        if (!step.why().isEmpty() && step.state().isBroken()) {
            html.text(" (" + step.why() + ", " + FigureText.sureness(step.brokenProbability()) + ")");
        }
        html.close("li");
    }
}
