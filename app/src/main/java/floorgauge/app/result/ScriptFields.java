package floorgauge.app.result;

import floorgauge.events.finding.ScriptReading;
import java.io.IOException;

/** Writes how a possession agrees with a script. */
record ScriptFields(JsonFields json) {

    void write(ScriptReading reading) throws IOException {
        json.text("name", reading.script());
        json.number("probability", reading.probability());
        json.flag("mirrored", reading.mirrored());
        json.text("sentence", reading.sentence());
        json.array("roles", reading.roles(), this::role);
        json.array("steps", reading.steps(), this::step);
        if (reading.breakdown().isPresent()) {
            json.whole("breakdownStep", reading.breakdown().getAsInt() + 1);
            json.number("breakdownProbability", reading.breakdownProbability());
        }
    }

    private void role(ScriptReading.RolePlayer role) throws IOException {
        json.text("role", role.role());
        json.whole("id", role.trackId());
    }

    private void step(ScriptReading.StepReading step) throws IOException {
        json.text("step", step.words());
        json.word("state", step.state());
        if (!Double.isNaN(step.fromSeconds())) {
            json.number("fromSeconds", step.fromSeconds());
            json.number("toSeconds", step.toSeconds());
        }
        json.number("brokenProbability", step.brokenProbability());
        if (!step.why().isEmpty()) {
            json.text("why", step.why());
        }
    }
}
