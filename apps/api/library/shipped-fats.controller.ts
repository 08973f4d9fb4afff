import { Controller, Get } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { shippedFats } from '#chemistry';
import { shippedFat, type ShippedFat } from '#contract';
import { evidenceText } from '#units';
import { Documents } from '../docs/documented.js';

/** The fats that ship with the program, with the evidence behind their figures. */
@ApiTags('fats')
@Controller('shipped-fats')
export class ShippedFatsController {
  @Get()
  @Documents({ summary: 'The fats that need no entry of their own', answer: shippedFat, list: true })
  list(): ShippedFat[] {
    return shippedFats.map(
      ({ key, title, inci, saponificationMgKohPerG, densityGPerMl, fattyAcidsPercent, evidence }) => ({
        key,
        title,
        inci,
        saponificationMgKohPerG,
        densityGPerMl,
        fattyAcidsPercent,
        evidence: evidenceText(evidence),
      }),
    );
  }
}
