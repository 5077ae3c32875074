"""Writes the vectors of this folder with general-purpose libraries.

Run here: python3 vectors.py (Debian: python3-mpmath, python3-scipy).
"""
import csv, math
import mpmath
import scipy
from scipy.interpolate import PchipInterpolator
from scipy.integrate import quad
from scipy.optimize import brentq
mpmath.mp.dps=40
def w(name, head, rows):
    with open(name,'w',newline='') as f:
        c=csv.writer(f, lineterminator='\n'); c.writerow(head); c.writerows(rows)
rows=[]
for re in (4000,4001,5000,1e4,33333,1e5,1e6,2.5e7,1e8):
    for k in (0,1e-7,1e-5,3.7e-4,5e-3,0.05):
        a,b=mpmath.mpf(k)/mpmath.mpf('3.7'), mpmath.mpf('2.51')/mpmath.mpf(re)
        x=mpmath.findroot(lambda x: x+2*mpmath.log10(a+b*x), 8)
        f=1/x**2
        # df/dRe by implicit differentiation at 40 digits
        g=lambda r: 1/mpmath.findroot(lambda x: x+2*mpmath.log10(a+mpmath.mpf('2.51')/r*x), x)**2
        d=mpmath.diff(g, mpmath.mpf(re))
        rows.append((repr(float(re)),repr(k),mpmath.nstr(f,20),mpmath.nstr(d,17)))
w('colebrook.csv',('re','rel','f','dfdre'),rows)
curves={
 'M':([0,18,32,44,54,63,71,78,84,92,102],[24,22,20,18,16,14,12,10,8,5,0]),
 'level':([0,5,6,20,21,40],[10,10,9,9,3,0]),
 'few':([0,7,30],[12,9,1]),
 'two':([3,30],[12,1]),
 'watts':([0,20,60,100],[300,360,395,380]),
}
rows=[]
for n,(x,y) in curves.items():
    p=PchipInterpolator(x,y)
    for i in range(0,21):
        q=x[0]+(x[-1]-x[0])*i/20
        rows.append((n,repr(float(q)),repr(float(p(q))),repr(float(p.derivative()(q)))))
w('pchip.csv',('curve','x','y','slope'),rows)
rows=[]
for b in (0.25,0.9144):
  for t in (1e-6,0.002,0.006,0.02):
    for H in (0.0015,0.005,0.0127,0.03,0.2):
        C=1.8385
        e=min(1.0,H/t)*b
        q,err=quad(lambda x: C*max(H-t*x/b,0)**1.5,0,e,epsabs=0,epsrel=1e-13,limit=500)
        rows.append((repr(b),repr(t),repr(C),repr(H),repr(q)))
w('tilt.csv',('width','tilt','c','head','flow'),rows)
rows=[]
for b in (0.1,0.7,3.0):
  for n in (0.012,0.035,0.1):
    for S in (0.002,0.02,0.3):
      for q in (1e-5,0.001,0.03):
        f=lambda y: (b*y)*(b*y/(b+2*y))**(2/3)*math.sqrt(S)/n-q
        y=brentq(f,1e-9,1000,xtol=1e-18,rtol=8.9e-16)
        rows.append((repr(b),repr(n),repr(S),repr(q),repr(y)))
w('manning.csv',('width','n','slope','flow','depth'),rows)
print(scipy.__version__, mpmath.__version__)
