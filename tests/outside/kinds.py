"""Reckons with scikit-learn what papers are of which kind, and compares every logarithm with ours.

usage: kinds.py FILE     FILE is written by tests/steps/papers.sh

Source: MultinomialNB of scikit-learn (PyPI), Laplace smoothing (alpha 1), shares of the kinds as they were learned. Words
that were never learned have no column there and say nothing here. Equal means: to 1e-9 of the logarithm's own size or of 1.
"""

import json
import sys

import numpy
from sklearn import __version__ as version
from sklearn.feature_extraction import DictVectorizer
from sklearn.naive_bayes import MultinomialNB

with open(sys.argv[1]) as file:
    told = json.load(file)
columns = DictVectorizer(dtype=numpy.float64, sparse=False)
learned = columns.fit_transform([counts for _, counts in told["learned"]])
theirs = MultinomialNB(alpha=1.0).fit(learned, [label for label, _ in told["learned"]])
asked = columns.transform([it["counts"] for it in told["asked"]])
good = bad = 0
furthest = 0.0
for logs, it in zip(theirs.predict_joint_log_proba(asked), told["asked"]):
    for label, log in zip(theirs.classes_, logs):
        apart = abs(log - it["logs"][label])
        furthest = max(furthest, apart / max(1.0, abs(log)))
        if apart <= 1e-9 * max(1.0, abs(log)):
            good += 1
        else:
            bad += 1
            print(f"FAIL {label}: theirs {log!r}, ours {it['logs'][label]!r}")
    assert set(it["logs"]) == set(theirs.classes_)
print(f"scikit-learn {version}: {len(told['learned'])} texts, {learned.shape[1]} words, {len(told['asked'])} asked; furthest apart {furthest:.1e}")
print(f"{good} passed, {bad} failed")
sys.exit(bad > 0 or good == 0)
