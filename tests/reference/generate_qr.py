"""What OpenCV reads off the codes in `qr_modules.csv`, drawn at four pixels a
module with a quiet zone of four modules.
"""
import csv
from pathlib import Path

import cv2
import numpy as np

HERE = Path(__file__).parent
MODULE, QUIET = 4, 4


def picture(side, digits):
    bits = np.array([int(b) for d in digits for b in f"{int(d, 16):04b}"][: side * side])
    modules = np.pad(bits.reshape(side, side), QUIET)
    grey = np.where(modules == 1, 0, 255).astype(np.uint8)
    return np.kron(grey, np.ones((MODULE, MODULE), np.uint8))


def main():
    # The other detector of OpenCV does not find the largest code.
    detector = cv2.QRCodeDetectorAruco()
    lines = ["read"]
    with (HERE / "qr_modules.csv").open(encoding="utf-8") as file:
        for row in csv.DictReader(file):
            image = picture(int(row["side"]), row["modules"])
            lines.append(detector.detectAndDecode(image)[0])
    (HERE / "qr_read.csv").write_text("\n".join(lines) + "\n")


main()
