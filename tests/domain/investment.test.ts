import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { annuityFactor, capitalRecovery } from '../../src/domain/annuity.ts';
import {
  breakEvenPrice,
  discountedPayback,
  internalRate,
  loanCover,
  netPresentValue,
  payback,
  realRate,
  repayment,
} from '../../src/domain/investment.ts';
import { NoAnswer } from '../../src/domain/refusal.ts';
import { between } from './between.ts';

const money = between(100, 1e6);
const life = fc.integer({ min: 1, max: 100 });
const rate = between(0, 1);
const growth = between(-0.5, 0.5);

describe('annuity factor', () => {
  test('is the sum of the savings, each worth less the later it comes', () => {
    fc.assert(
      fc.property(life, rate, growth, (n, r, g) => {
        let sum = 0;
        for (let year = 1; year <= n; year++) sum += (1 + g) ** (year - 1) / (1 + r) ** year;
        expect(Math.abs(annuityFactor(n, r, g) / sum - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  test('has no jump where rate and growth agree, nor where they nearly do', () => {
    for (const gap of [0, 1e-15, 1e-12, 1e-9, -1e-12]) expect(annuityFactor(20, 0.05 + gap, 0.05)).toBeCloseTo(20 / 1.05, 6);
    expect(annuityFactor(20, 0, 0)).toBe(20);
    expect(annuityFactor(20, 1e-17, 0)).toBeCloseTo(20, 12);
  });

  test('is undone by the capital recovery factor', () => {
    fc.assert(
      fc.property(life, rate, (n, r) => {
        expect(capitalRecovery(n, r) * annuityFactor(n, r, 0)).toBeCloseTo(1, 12);
      }),
    );
    expect(capitalRecovery(10, 0)).toBeCloseTo(0.1, 15);
  });
});

describe('payback', () => {
  test('returns the outlay to the penny at the year it names, straight line within the year', () => {
    fc.assert(
      fc.property(money, money, growth, (capital, saving, g) => {
        let years: number;
        try {
          years = payback(capital, saving, g, undefined).years;
        } catch (thrown) {
          expect(thrown).toBeInstanceOf(NoAnswer);
          expect(saving * annuityFactor(100, 0, g)).toBeLessThan(capital);
          return;
        }
        const full = Math.min(99, Math.floor(years));
        const returned = saving * annuityFactor(full, 0, g) + (years - full) * saving * (1 + g) ** full;
        expect(Math.abs(returned / capital - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  test('takes no less time with interest than without', () => {
    fc.assert(
      fc.property(money, between(0.02, 1), rate, growth, (capital, share, r, g) => {
        const plain = yearsOrNone(() => payback(capital, share * capital, g, undefined));
        const discounted = yearsOrNone(() => discountedPayback(capital, share * capital, r, g, undefined));
        expect(discounted).toBeGreaterThanOrEqual(plain);
      }),
    );
  });

  test('of exactly the life is paid back, whatever the rounding', () => {
    expect(payback(0.3, 0.1, 0, 3).years).toBe(3);
    expect(payback(1000, 100, 0, 10).years).toBe(10);
    for (let n = 1; n <= 100; n++) {
      expect(payback(n * 0.1, 0.1, 0, n).years).toBeCloseTo(n, 9);
      const saving = 33_333.3;
      expect(discountedPayback(saving * annuityFactor(n, 0.07, 0), saving, 0.07, 0, n).years).toBeCloseTo(n, 6);
    }
  });

  test('beyond the life, or beyond 100 years, has no answer and says so', () => {
    expect(() => payback(1001, 100, 0, 10)).toThrow('not paid back within its life of 10 years');
    expect(() => payback(10_001, 100, 0, undefined)).toThrow('not paid back within 100 years');
    expect(() => discountedPayback(1000, 100, 0.1, 0, undefined)).toThrow('not paid back within 100 years');
  });

  test('without a saving has no answer, nor where nothing was laid out', () => {
    expect(() => payback(1000, 0, 0, 10)).toThrow('no saving');
    expect(() => payback(0, -5, 0, 10)).toThrow('no saving');
    expect(payback(0, 5, 0, 10).years).toBe(0);
  });
});

const yearsOrNone = (find: () => { years: number }): number => {
  try {
    return find().years;
  } catch {
    return Number.POSITIVE_INFINITY;
  }
};

describe('net present value and its roots', () => {
  test('at the internal rate it is 0', () => {
    fc.assert(
      fc.property(money, between(-0.01, 3), life, growth, between(0.01, 1), (capital, share, n, g, left) => {
        let irr: number;
        try {
          irr = internalRate(capital, share * capital, n, g, left * capital).irr;
        } catch (thrown) {
          expect(thrown).toBeInstanceOf(NoAnswer);
          return;
        }
        expect(irr).toBeGreaterThan(-1);
        fc.pre(irr > -0.5);
        const { savings_today, residual_today, npv } = netPresentValue(capital, share * capital, n, irr, g, left * capital);
        expect(Math.abs(npv)).toBeLessThan(1e-9 * (Math.abs(savings_today) + residual_today + capital));
      }),
    );
  });

  test('a kit that saves anything at all has a rate of return, and it is the larger the more it saves', () => {
    fc.assert(
      fc.property(money, between(0.001, 2), life, growth, (capital, share, n, g) => {
        const { irr } = internalRate(capital, share * capital, n, g, 0);
        expect(internalRate(capital, 1.1 * share * capital, n, g, 0).irr).toBeGreaterThan(irr);
      }),
    );
  });

  test('a saving that goes on and on returns its share of the outlay', () => {
    expect(internalRate(100, 150, 100, 0, 0).irr).toBeCloseTo(1.5, 12);
  });

  test('a saving that dwindles to nothing still returns what its first year does', () => {
    expect(internalRate(100, 200, 100, -0.9999, 0).irr).toBeCloseTo(1, 3);
    expect(internalRate(1e12, 1, 1, 0, 0).irr).toBeGreaterThan(-1);
    expect(() => internalRate(1e12, 1e-9, 1, 0, 0)).toThrow(NoAnswer);
  });

  test('there is no rate of return where nothing comes back or nothing was laid out', () => {
    expect(() => internalRate(1000, 0, 10, 0, 0)).toThrow(NoAnswer);
    expect(() => internalRate(1000, -10, 10, 0, 0)).toThrow(NoAnswer);
    expect(() => internalRate(0, 100, 10, 0, 0)).toThrow(NoAnswer);
  });

  test('at the break-even price of bought bedding it is 0', () => {
    fc.assert(
      fc.property(money, between(1, 1000), between(0, 1e5), life, rate, growth, (capital, tonnes, running, n, r, g) => {
        const { price_per_t } = breakEvenPrice(capital, tonnes, running, n, r, g, 0.1 * capital);
        const { npv, savings_today } = netPresentValue(capital, price_per_t * tonnes - running, n, r, g, 0.1 * capital);
        expect(Math.abs(npv)).toBeLessThan(1e-9 * (capital + Math.abs(savings_today) + running * annuityFactor(n, r, g)));
      }),
    );
  });

  test('a kit that pays for itself from the end value alone has no break-even price', () => {
    expect(() => breakEvenPrice(1000, 10, 0, 2, 0, 0, 2000)).toThrow('even where bought-in bedding costs nothing');
  });
});

test('payments in arrears, discounted at the loan rate, are worth what was borrowed', () => {
  fc.assert(
    fc.property(money, fc.integer({ min: 1, max: 40 }), rate, fc.constantFrom(1, 2, 4, 12), (borrowed, years, r, often) => {
      const { payment, payments, rate_per_payment } = repayment(borrowed, years, r, often);
      expect(Math.abs((payment * annuityFactor(payments, rate_per_payment, 0)) / borrowed - 1)).toBeLessThan(1e-12);
    }),
  );
});

test('without loan payments there is no cover to speak of', () => {
  expect(() => loanCover(1000, 0)).toThrow(NoAnswer);
  expect(loanCover(-500, 1000).cover).toBe(-0.5);
});

test('a real rate, with prices rising, is the nominal one again', () => {
  fc.assert(
    fc.property(between(0, 1), between(-0.5, 0.9), (nominal, inflation) => {
      const { real_rate } = realRate(nominal, inflation);
      expect((1 + real_rate) * (1 + inflation) - 1).toBeCloseTo(nominal, 12);
    }),
  );
});
